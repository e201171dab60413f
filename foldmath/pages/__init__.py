"""Pages: takes templates filled with values as HTML, gives PDF by way of blocks and flowables."""
