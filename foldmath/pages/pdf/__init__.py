"""Print: takes a document's blocks and recorded pictures, gives PDF pages by reportlab."""
