"""Inputs that several rules of release share."""
