"""Floor 9: `diagnose knowledge new` asks for an entry field by field and writes it into a shop's own folder."""

__all__: list[str] = []
