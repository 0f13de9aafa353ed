using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.LineCare.Scope;

/// <summary>A licence to practise in one state.</summary>
/// <param name="State">The state, as the agency writes it.</param>
/// <param name="ValidThrough">Last valid day, included; empty when no end is recorded.</param>
/// <param name="Compact">A multistate licence: it also covers the other states of the compact.</param>
public sealed record PracticeLicence(string State, LocalDate? ValidThrough, bool Compact = false);

/// <summary>A skill signed off, with the last day it counts.</summary>
/// <param name="Skill">The agency's skill word.</param>
/// <param name="ValidThrough">Last valid day, included; empty when it does not lapse.</param>
public sealed record SignedSkill(string Skill, LocalDate? ValidThrough = null);

/// <summary>A nurse as the scope gate sees her.</summary>
/// <param name="Name">As shown in reasons.</param>
/// <param name="Credential">As the licence says, for example <c>RN</c> or <c>LPN</c>.</param>
/// <param name="Skills">Signed-off skills.</param>
/// <param name="Licences">Licences to practise.</param>
public sealed record ScopedNurse(string Name, string Credential, ImmutableArray<SignedSkill> Skills, ImmutableArray<PracticeLicence> Licences);

/// <summary>Kinds of care that a credential may exclude, whatever the skills say.</summary>
[Flags]
public enum GuardedCare
{
    /// <summary>None of them.</summary>
    None = 0,

    /// <summary>Care of an implanted port.</summary>
    Port = 1,

    /// <summary>The first dose of a drug.</summary>
    FirstDose = 2,

    /// <summary>Teaching parenteral nutrition.</summary>
    NutritionTeaching = 4,

    /// <summary>An assessment: start of care, resumption, recertification.</summary>
    Assessment = 8,

    /// <summary>Removal of a central line.</summary>
    Removal = 16,

    /// <summary>An infusion that must never stop.</summary>
    NeverInterrupt = 32,

    /// <summary>Care of a child.</summary>
    Child = 64,
}

/// <summary>What is to be done, where and when.</summary>
/// <param name="Skills">Skill words the care needs.</param>
/// <param name="Guarded">What a credential may exclude.</param>
/// <param name="State">The state where the patient is at that hour.</param>
/// <param name="On">Civil day of the care there.</param>
/// <param name="CompactStates">States of the licence compact; empty when the agency uses none.</param>
public sealed record ScopeQuestion(
    ImmutableArray<string> Skills, GuardedCare Guarded, string State, LocalDate On, ImmutableArray<string> CompactStates = default);

/// <summary>One reason why not.</summary>
/// <param name="Code">A code of <see cref="ScopeCodes"/>.</param>
/// <param name="Sentence">One plain sentence.</param>
public sealed record ScopeReason(string Code, string Sentence);
