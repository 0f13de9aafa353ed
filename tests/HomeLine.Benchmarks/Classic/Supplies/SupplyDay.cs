namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>
/// A day of people who start from home with skills, tools and a stock of parts (Pillac, Gueret and Medaglia 2013). Node 0 is the depot, then the people's homes, then the
/// requests. Whoever has passed by the depot is short of no tool and no part.
/// </summary>
internal sealed record SupplyDay(string Name, int People, IReadOnlyList<SupplyNode> Nodes)
{
    public double Leg(int from, int to) => Nodes[from].Plane.To(Nodes[to].Plane);

    /// <summary>Whether a person has the skills of a request, tools and parts apart.</summary>
    public bool Can(int person, int request) => Nodes[request].Skills.All(Nodes[person].Skills.Contains);
}

/// <summary>A home with what its person has, or a request with what it needs; parts by kind.</summary>
internal sealed record SupplyNode(PlaneNode Plane, int[] Skills, int[] Tools, int[] Parts);
