using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Exchange.Json;

/// <summary>One due window in a file: instants with the offset of the patient's zone, dates as civil days there.</summary>
public sealed record DueEntry(
    string Patient,
    string? Line,
    string? Lumen,
    string? Order,
    string Item,
    string Standing,
    string Basis,
    string Opens,
    string Target,
    string LateFrom,
    string OpensOn,
    string LastDay,
    string Owner,
    bool Late,
    bool OnHold,
    int SealClass,
    ReasonEntry Because)
{
    /// <summary>Every window of the roster, by patient in roster order, soonest late first.</summary>
    public static ImmutableArray<DueEntry> AllOf(AgencyRoster roster, CareFiles files, Instant now) =>
        [.. roster.Patients.SelectMany(p => Of(p, files.WhatIsDue(p.Id, now), now))];

    private static IEnumerable<DueEntry> Of(Patient patient, CareAnswer answer, Instant now) => answer.Windows.Select(w => new DueEntry(
        patient.Id.Value,
        w.Line?.Value,
        w.Lumen,
        w.Order,
        JsonText.Name(w.Item),
        JsonText.Name(w.Standing),
        JsonText.Name(w.Basis),
        JsonText.Moment(w.Opens, patient.Zone),
        JsonText.Moment(w.Target, patient.Zone),
        JsonText.Moment(w.LateFrom, patient.Zone),
        JsonText.Date(w.OpensOn),
        JsonText.Date(w.LastDay),
        JsonText.Name(w.Owner),
        w.IsLateAt(now),
        answer.OnHold is not null,
        w.SealClass,
        ReasonEntry.Of(w.Because)));
}

/// <summary>Why a window is where it is.</summary>
public sealed record ReasonEntry(
    string Sentence,
    string? Event,
    string? EventDate,
    string Rule,
    string Value,
    string SetBy,
    string Source,
    ImmutableArray<string> Overrode)
{
    public static ReasonEntry Of(WindowReason reason) => new(
        reason.Sentence,
        reason.Anchor?.Value,
        reason.AnchorDate is { } date ? JsonText.Date(date) : null,
        reason.RuleId,
        reason.RuleValue,
        JsonText.Name(reason.Level),
        reason.Source,
        reason.Overrode);
}
