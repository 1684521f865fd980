"""The verdicts of the room Heat: one function a check, named <key>_check; None where it does not apply."""
