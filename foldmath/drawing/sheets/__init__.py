"""Pictures of the sheet: takes paper as it lies or opened, gives scenes of it, folds to come among them."""
