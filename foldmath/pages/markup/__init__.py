"""Markup: takes the HTML that templates give, gives blocks: paragraphs, rows, boxes and pictures."""
