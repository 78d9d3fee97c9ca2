"""The rules, by what they are on."""
