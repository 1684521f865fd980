"""The words of the room Air and gas: its answers, checks, tables, charts and drawings."""

ANSWERS = ()
CHECKS = ()
TABLES = ()
CHARTS = ()
DRAWINGS = ()
