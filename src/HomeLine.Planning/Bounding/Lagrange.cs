namespace HomeLine.Planning.Bounding;

/// <summary>
/// What every plan costs at least at any prices of the rows and the earlier tiers: the rows' own values, each side variable at the end that pays, and on top the least reduced cost of
/// each nurse-day, which others find. True at whatever prices; good only at good ones.
/// </summary>
internal sealed class Lagrange(Rows rows, Tier tier, long?[] limits, Func<SideVariable, bool> leftOut)
{
    private readonly SideVariable[] _sides = [.. rows.Sides.Where(s => !leftOut(s))];

    /// <summary>The value without the nurse-days.</summary>
    public double Of(double[] rowPrice, double[] tierPrice)
    {
        double value = 0;
        for (int r = 0; r < rowPrice.Length; r++) value += rowPrice[r] * Side(r, rowPrice[r]);
        for (int t = 0; t < (int)tier; t++) value -= tierPrice[t] * (limits[t] ?? 0);
        foreach (SideVariable side in _sides) value += side.Most * Math.Min(0, Cost(side, rowPrice, tierPrice));
        return value;
    }

    /// <summary>By row: how far it is from being kept when side variables and the given visits are as they pay; the direction in which its price is to go.</summary>
    public double[] Missing(double[] rowPrice, double[] tierPrice, IEnumerable<VisitNode> visits)
    {
        var missing = new double[rowPrice.Length];
        for (int r = 0; r < missing.Length; r++) missing[r] = Side(r, rowPrice[r]);
        foreach (VisitNode visit in visits)
            foreach ((int row, int times) in visit.Rows) missing[row] -= times;
        foreach (SideVariable side in _sides)
        {
            if (Cost(side, rowPrice, tierPrice) >= 0) continue;
            foreach ((int row, int times) in side.Terms) missing[row] -= times * side.Most;
        }

        // A row of the people tier alone says nothing about earlier ones; a row that has room and no price needs none.
        for (int r = 0; r < missing.Length; r++)
        {
            if ((tier < Tier.People && rows.OnlyPeople(r)) || (IsOnlyMost(r) && missing[r] > 0 && rowPrice[r] >= 0)) missing[r] = 0;
        }

        return missing;
    }

    /// <summary>The price a row may have: none above nothing where only its most matters.</summary>
    public double Allowed(int row, double price) => IsOnlyMost(row) ? Math.Min(0, price) : price;

    /// <summary>No least, or a least of nothing that no sum of visits goes below.</summary>
    private bool IsOnlyMost(int row) => rows.Bounds[row].Least < rows.Bounds[row].Most;

    private int Side(int row, double price) => price > 0 && rows.Bounds[row].Least != int.MinValue ? rows.Bounds[row].Least : rows.Bounds[row].Most;

    private double Cost(SideVariable side, double[] rowPrice, double[] tierPrice)
    {
        double cost = 0;
        for (int t = 0; t <= (int)tier; t++) cost += tierPrice[t] * side.Adds[t];
        foreach ((int row, int times) in side.Terms) cost -= rowPrice[row] * times;
        return cost;
    }
}
