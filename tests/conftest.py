"""What all tests share: no example of a property fails for being slow on a busy machine."""
from hypothesis import settings

settings.register_profile("steady", deadline=None)
settings.load_profile("steady")
