"""The verdicts of the room Air and gas: one function a check, named <key>_check; None where it does not apply."""
