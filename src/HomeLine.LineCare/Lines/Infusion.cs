namespace HomeLine.LineCare.Lines;

/// <summary>How an infusion runs; the administration-set clock depends on it.</summary>
public enum InfusionKind
{
    /// <summary>Separate doses; the set is used per dose.</summary>
    Intermittent,

    /// <summary>Runs without stopping, no lipid and no blood.</summary>
    Continuous,

    /// <summary>Parenteral nutrition with lipid in the bag, usually overnight.</summary>
    ParenteralNutrition,

    /// <summary>Lipid alone.</summary>
    Lipid,

    /// <summary>Blood.</summary>
    Blood,
}

/// <summary>What runs through a lumen, and who changes its set.</summary>
/// <param name="Patient">Whose infusion.</param>
/// <param name="Line">The line it runs through.</param>
/// <param name="Lumen">The lumen's letter.</param>
/// <param name="Kind">How it runs.</param>
/// <param name="Drug">The therapy in plain trade words, never a brand.</param>
/// <param name="SetChangedBy">Who changes the set; a caregiver's set change is never a nurse visit.</param>
/// <param name="NeverInterrupt">An inotrope or another infusion that must not stop.</param>
public sealed record Infusion(
    PatientId Patient,
    LineId Line,
    string Lumen,
    InfusionKind Kind,
    string Drug,
    PerformerKind SetChangedBy,
    bool NeverInterrupt = false);
