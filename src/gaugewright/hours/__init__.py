"""Hours of work. In: a design, its graded pieces, and paces. Out: how long each piece and the finishing take, with a range."""
