"""The verdicts of the room Face: one function a check, named <key>_check; None where it does not apply."""
