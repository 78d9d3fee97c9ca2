"""Inputs that several rules of the motion share."""
