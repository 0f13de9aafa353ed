using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>A visit as the nurse wrote it down. Days and times are those of the patient's home.</summary>
public sealed record VisitEntry
{
    /// <summary>Made by the device when the form was opened: the same one sent twice counts once.</summary>
    public required string Submission { get; init; }
    public required PatientId Patient { get; init; }

    /// <summary>The published visit; empty for one that was not planned.</summary>
    public string? Visit { get; init; }

    /// <summary>Why a visit that was not planned was made.</summary>
    public string UnplannedBecause { get; init; } = "";
    public required LocalDate Day { get; init; }
    public LocalTime? Arrived { get; init; }

    /// <summary>When the nurse left; earlier than the arrival means after midnight.</summary>
    public LocalTime? Left { get; init; }

    /// <summary>Where, when it was not the home on file.</summary>
    public string Elsewhere { get; init; } = "";

    /// <summary>The questions of the symptom screen were asked; unknown is not no.</summary>
    public bool SignsAsked { get; init; }

    /// <summary>Questions of the symptom screen that were answered yes, by id.</summary>
    public ImmutableArray<string> Signs { get; init; } = [];
    public ImmutableArray<ItemEntry> Items { get; init; } = [];
    public ImmutableArray<LineEntry> Lines { get; init; } = [];
    public ImmutableArray<DrawEntry> Draws { get; init; } = [];
    public ImmutableArray<TeachBack> Teaching { get; init; } = [];
    public FirstDoseEntry? FirstDose { get; init; }

    /// <summary>What the practitioner was told about care that was not done, when that has happened already.</summary>
    public PractitionerTold? Told { get; init; }

    /// <summary>An allergy or reaction the patient told of, in their words.</summary>
    public string AllergyTold { get; init; } = "";
    public Incident Incident { get; init; }
    public string IncidentText { get; init; } = "";
    public string Note { get; init; } = "";

    /// <summary>Why an earlier record is amended; empty for a first one.</summary>
    public string AmendedBecause { get; init; } = "";

    /// <summary>What the device's clock said when it was sent; empty when the device did not say.</summary>
    public Instant? DeviceNow { get; init; }

    /// <summary>Answers to the questions asked before signing, by the question's key.</summary>
    public ImmutableDictionary<string, string> Answers { get; init; } = ImmutableDictionary<string, string>.Empty;
}

/// <summary>Something that happened to a person or a line at the visit and is looked into.</summary>
public enum Incident
{
    None,

    /// <summary>Somebody was stuck by a needle or another sharp.</summary>
    NeedleStick,

    /// <summary>The patient fell.</summary>
    Fall,

    /// <summary>The line was damaged.</summary>
    LineDamage,

    /// <summary>Something else, in words.</summary>
    Other,
}

/// <summary>The practitioner was told: who, when, what.</summary>
public sealed record PractitionerTold(string Who, LocalTime? At, string Said);

/// <summary>What is known before the first dose of a drug at home.</summary>
/// <param name="AllergyHistoryTaken">The allergy history is recorded, none known among the answers.</param>
/// <param name="KitGoodThrough">Last good day of the reaction kit in the home; empty when there is no kit.</param>
/// <param name="DrugInHome">The drug was in the home when the visit began.</param>
/// <param name="InfusedMinutes">How long it ran; empty when not said.</param>
public sealed record FirstDoseEntry(bool AllergyHistoryTaken, LocalDate? KitGoodThrough, bool DrugInHome, int? InfusedMinutes);
