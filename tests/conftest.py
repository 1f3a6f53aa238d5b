"""What all tests share."""

from hypothesis import settings

settings.register_profile("partsplan", deadline=None)  # busy machines are no failure
settings.load_profile("partsplan")
