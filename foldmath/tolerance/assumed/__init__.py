"""What paper and hands are taken to be like: tables with their reasons."""
