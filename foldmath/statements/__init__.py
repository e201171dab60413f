"""What folding says: takes moments, products and claims, gives true sentences and likely wrong ones."""
