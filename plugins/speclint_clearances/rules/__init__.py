"""The rules of room, access and lifting, one module a subject."""
