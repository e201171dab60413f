"""Pictures of booklets: takes a sheet to be gathered, gives scenes of it standing up and closed."""
