"""Inputs that several rules of fits share."""
