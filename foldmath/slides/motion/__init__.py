"""Paper in motion: takes two states of the model, gives where all of it is between them."""
