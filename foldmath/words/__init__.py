"""Words: takes values such as steps, gives the sentences that people read."""
