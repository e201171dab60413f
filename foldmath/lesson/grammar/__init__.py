"""The grammar of steps: takes a sentence, gives the step that it asks for, or the nearest one."""
