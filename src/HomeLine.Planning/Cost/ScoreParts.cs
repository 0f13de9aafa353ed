using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Cost;

/// <summary>What one patient's week adds to the score.</summary>
internal record struct PatientPart(long Critical, long Risk, long Duties, long People, long UnusedLife);

/// <summary>What one nurse-day adds to the score.</summary>
internal record struct RoutePart(long Work, long Load);

/// <summary>Sums of parts, to which a changed part is added and from which the old one is taken.</summary>
internal struct ScoreSum
{
    private long _critical, _risk, _duties, _work, _people, _unused;

    public readonly PlanScore Score => new(_critical, _risk, _duties, _work, _people, _unused);

    public void Add(in PatientPart part)
    {
        _critical += part.Critical;
        _risk += part.Risk;
        _duties += part.Duties;
        _people += part.People;
        _unused += part.UnusedLife;
    }

    public void Take(in PatientPart part) => Add(new PatientPart(-part.Critical, -part.Risk, -part.Duties, -part.People, -part.UnusedLife));

    public void Add(in RoutePart part)
    {
        _work += part.Work;
        _people += part.Load;
    }

    public void Take(in RoutePart part) => Add(new RoutePart(-part.Work, -part.Load));
}
