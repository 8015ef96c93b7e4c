"""Floor 6: the store of a fleet (PostgreSQL), and how a journal and it come to hold the same events.

The journal on this computer stays the truth here and waits for nobody. Letters go to the store and come from it, in
the order of its commits. Only this room may import psycopg, and only when it is needed.
"""

__all__: list[str] = []
