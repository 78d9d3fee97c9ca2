"""Checks component specs of a steam locomotive against the rules of the trade."""
