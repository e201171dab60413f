"""The paper: takes a sheet and steps, gives folded states, crease patterns and what each moment shows."""
