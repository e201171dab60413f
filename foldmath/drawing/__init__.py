"""Pictures: takes moments and products, gives scenes (marks with meanings), and draws them in vectors."""
