"""What is shown in the room Make: one function a table, chart or drawing, named <key>_table, _chart or _drawing."""
