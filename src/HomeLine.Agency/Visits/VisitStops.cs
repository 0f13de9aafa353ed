using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.RedFlags;

namespace HomeLine.Agency.Visits;

/// <summary>Red flags found at the visit: the same screen as on the phone decides, and the nurse reads whom to call. Nothing here finds a time.</summary>
internal static class VisitStops
{
    /// <summary>Codes of the record of care at which a licensed person is called from the door.</summary>
    private static readonly ImmutableHashSet<string> CallFor = [DecisionCodes.LengthGrew, DecisionCodes.GirthRose, DecisionCodes.RemovedShorter];

    /// <summary>The screen with everything answered yes that was found; empty when nothing was.</summary>
    public static ScreenOutcome? Screen(VisitEntry entry, ScreenContext context)
    {
        ImmutableDictionary<string, ScreenAnswer> yes = Flags(entry).Distinct().ToImmutableDictionary(id => id, _ => ScreenAnswer.Yes, StringComparer.Ordinal);
        return yes.IsEmpty ? null : SymptomScreen.Evaluate(yes, context);
    }

    /// <summary>Ids of the questions that the visit answers with yes.</summary>
    public static IEnumerable<string> Flags(VisitEntry entry) => entry.Signs
        .Concat(entry.Lines.SelectMany(l => SiteRedFlags.In(l.Found)))
        .Concat(entry.Incident == Incident.LineDamage ? ["line-broken"] : []);

    /// <summary>The lines that a red flag was found on; every line that is in when it is a sign of the patient as a whole.</summary>
    public static ImmutableArray<LineId> Lines(VisitEntry entry, ImmutableArray<LineId> linesIn)
    {
        ImmutableArray<LineId> flagged = [.. entry.Lines.Where(l => SiteRedFlags.In(l.Found).Length > 0).Select(l => l.Line)];
        return entry.Signs.IsDefaultOrEmpty && !flagged.IsEmpty && entry.Incident != Incident.LineDamage ? flagged : linesIn;
    }

    /// <summary>What the nurse reads; empty when there is no red flag.</summary>
    public static VisitStop? Of(VisitEntry entry, ScreenOutcome? screen, ScreenContext context, ImmutableArray<RecordingReply> replies, Patient patient, AgencyProfile profile)
    {
        ImmutableArray<string> measured = [.. replies.Where(r => CallFor.Contains(r.Code)).Select(r => $"{r.Line}: {r.Sentence}")];
        bool stopped = screen?.Stopped is not null;
        if (!stopped && measured.IsEmpty) return null;
        bool emergency = screen is { Class: ScreenClass.Emergency, Stopped: not null } || replies.Any(r => r.Code == DecisionCodes.RemovedShorter);
        ImmutableArray<string> found = [.. stopped ? InWords(entry, context) : [], .. measured];
        string practitioner = patient.Practitioner.Length > 0 ? patient.Practitioner : "the practitioner";
        List<string> wording = [];
        if (emergency) wording.Add($"Call {profile.EmergencyNumber} now.");
        wording.Add(context.InfusionMustNotStop
            ? "Do not use the line for anything else. Do not stop the heart infusion unless a clinician tells you to."
            : "Do not use the line, no flush, no dose, no draw, until the clinical manager or the practitioner has decided.");
        if (screen is { Stopped: not null }) wording.AddRange(FirstAid(screen));
        wording.Add($"Call the clinical manager on {profile.OnCallPhone} now, then {practitioner}.");
        if (!emergency) wording.Add($"If breathing gets hard, or there is fainting or confusion, call {profile.EmergencyNumber} at once.");
        wording.Add(stopped
            ? "Signing locks the line, holds the coming visits and lists who is told. It books nothing."
            : "Signing keeps the measurement, and the question goes to the clinical manager. It books nothing.");
        return new VisitStop(emergency, found, [.. wording], emergency ? profile.EmergencyNumber : profile.OnCallPhone);
    }

    /// <summary>The first-aid line stands second, when there is one.</summary>
    private static IEnumerable<string> FirstAid(ScreenOutcome screen) => screen.Wording.Length == 4 ? [screen.Wording[1]] : [];

    private static IEnumerable<string> InWords(VisitEntry entry, ScreenContext context)
    {
        var asked = SymptomScreen.Questions(ScreenContext.Unknown with { FeverAtCelsius = context.FeverAtCelsius }).ToDictionary(q => q.Id, q => q.Text, StringComparer.Ordinal);
        foreach (string sign in entry.Signs) yield return $"Yes to: {asked.GetValueOrDefault(sign, sign)}";
        foreach (LineEntry line in entry.Lines)
            if ((line.Found & SiteRedFlags.All) is var flags and not SiteFinding.None)
                yield return $"{line.Line}: {VisitWords.Of(flags)}";
        if (entry.Incident == Incident.LineDamage) yield return $"Damage to the line: {entry.IncidentText}";
    }
}
