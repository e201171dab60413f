"""Moments: takes steps, does them on the model, gives what each moment shows."""
