"""The terminal: how words leave through it, and what keeps them from leaving."""
