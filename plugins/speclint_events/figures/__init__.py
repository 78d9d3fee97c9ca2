"""Drawings for the review pack: the valves, the steam and the pull of an engine, one figure a module."""
