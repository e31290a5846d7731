"""Cutting pieces from stock of one length: least reels or rolls, with a bound that proves it."""
