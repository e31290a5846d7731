"""Leads as tables: what each is made of, how long it is, where it crosses others."""
