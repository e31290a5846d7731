"""Parts of a drawing that know no sheet: colours, lettering, hatching, scale bar."""
