using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Care was missed or refused and the practitioner has to be told. Open until somebody ticks it with who, when and what was said.</summary>
public sealed record PractitionerNotice
{
    public required string Id { get; init; }

    /// <summary>The visit it follows from.</summary>
    public required string Record { get; init; }
    public required PatientId Patient { get; init; }

    /// <summary>Who ordered, by the plan of care.</summary>
    public string Practitioner { get; init; } = "";

    /// <summary>What was not done and why.</summary>
    public required string What { get; init; }
    public required Instant Since { get; init; }
    public Instant? ToldAt { get; init; }

    /// <summary>Who was told.</summary>
    public string ToldTo { get; init; } = "";

    /// <summary>Who told.</summary>
    public string ToldBy { get; init; } = "";

    /// <summary>What was said, and the answer.</summary>
    public string Said { get; init; } = "";
}
