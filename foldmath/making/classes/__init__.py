"""Classes: every pupil's own pages, laid out by as many processes as there are, here or on a cluster."""

from foldmath.making.classes.crew import Crew, own_crew
from foldmath.making.classes.making import CLASS_SET, ClassLesson, Classroom, make_class

__all__ = ["CLASS_SET", "ClassLesson", "Classroom", "Crew", "make_class", "own_crew"]
