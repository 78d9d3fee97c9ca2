"""Inputs that several rules of agreement share."""
