using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>What is known of a referral while the referrer is on the phone. What is not known is empty, and asked for.</summary>
public sealed record ReferralFacts
{
    public required string Name { get; init; }

    /// <summary>Where the home is; empty while the address is not known.</summary>
    public MapPoint? Home { get; init; }

    /// <summary>State of the home.</summary>
    public string State { get; init; } = "";

    /// <summary>When the person comes home, branch time.</summary>
    public LocalDateTime? HomeAt { get; init; }

    /// <summary>The next dose that somebody has to give, branch time.</summary>
    public LocalDateTime? NextDoseAt { get; init; }

    /// <summary>When drug and kit are in the home, branch time.</summary>
    public LocalDateTime? SuppliesAt { get; init; }
    public LineKind? Line { get; init; }

    /// <summary>When the line was placed.</summary>
    public LocalDate? PlacedOn { get; init; }
    public DressingKind? Dressing { get; init; }
    public bool TipConfirmed { get; init; }

    /// <summary>Whether the first dose of this drug was given under watch.</summary>
    public bool FirstDoseGiven { get; init; }

    /// <summary>Whether somebody at home will learn the task.</summary>
    public bool SomebodyLearns { get; init; }

    /// <summary>Whether orders with a practitioner's name were received.</summary>
    public bool OrdersReceived { get; init; }

    /// <summary>What else matters.</summary>
    public string Note { get; init; } = "";

    /// <summary>What must be known before anybody may say yes.</summary>
    public ImmutableArray<string> Missing()
    {
        var missing = ImmutableArray.CreateBuilder<string>();
        if (Home is null) missing.Add("Where is the home?");
        if (HomeAt is null) missing.Add("When does the person come home?");
        if (Line is null) missing.Add("Which line is it?");
        if (PlacedOn is null) missing.Add("When was the line placed?");
        if (Dressing is null) missing.Add("What lies on the site: film, gauze, gauze under film?");
        if (!TipConfirmed && Line is not LineKind.Midline) missing.Add("Is the tip confirmed, in writing? Without it the line is not used.");
        if (!FirstDoseGiven) missing.Add("Was the first dose given under watch, and are there allergies?");
        if (SuppliesAt is null) missing.Add("When are drug and kit in the home? Nobody is sent before.");
        if (!OrdersReceived) missing.Add("Are the orders here, with the practitioner's name?");
        return missing.ToImmutable();
    }
}
