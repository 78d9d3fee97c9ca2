"""Inputs that several rules of joints share."""
