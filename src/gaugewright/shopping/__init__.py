"""What to buy where: the cheapest basket, exactly.

In: grams of each colour of all that is made, and shops with their prices and offers. Out: what to buy in which
shop, what each till asks, what the next best choice costs, what a budget leaves. Nothing here reads files or prints.

```
makes, amounts ─> needs ─┐
                         ├─> baskets (one shop: till) ─> shares (all shops) ─> plan ─> budget
shops, offers ───────────┘
```
"""
