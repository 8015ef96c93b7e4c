"""A complaint's fault tree drawn for people: on the screen, as a picture, and in forms other programs read."""

__all__: list[str] = []
