using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;

namespace HomeLine.Agency.Mending;

/// <summary>The answers to a trouble that was told before, on the week as it stands. Pure.</summary>
internal static class TroubleAnew
{
    public static Outcome<MendOffer> Offer(FiledTrouble filed, AgencyAtHand agency, PlannedWeek week, CancellationToken cancel)
    {
        if (filed.Entry is InHospital) return Freed(filed, agency, week);
        Outcome<PreparedTrouble> prepared = PreparedTrouble.Of(filed.Entry, Before(filed, agency), week, filed.Id, cancel);
        if (!prepared.Succeeded) return prepared.Refusal!;
        return prepared.Value.Stop is null
            ? prepared.Value.Offer
            : new Refusal("screen-asked-again", "What is known of the patient has changed since the questions were asked.", "Ask the questions again: report it anew.");
    }

    /// <summary>The visits were taken out when it was told; what can change is which visit could be earlier.</summary>
    private static MendOffer Freed(FiledTrouble filed, AgencyAtHand agency, PlannedWeek week)
    {
        MendOffer was = filed.Offer!;
        ImmutableArray<string> nurses = [.. was.Answers.SelectMany(a => a.Changes).Select(c => c.Before?.Nurse).OfType<string>().Distinct()];
        return was with { Answers = FreedCase.Answers(new MendSetting(agency, week), nurses) };
    }

    /// <summary>The agency without what the trouble itself left in the record: a second refusal is not its own first one, and the absence is its own.</summary>
    private static AgencyAtHand Before(FiledTrouble filed, AgencyAtHand agency)
    {
        string own = $"{filed.Id}-";
        ImmutableArray<LineEvent> others = [.. agency.Roster.Events.Where(e => !e.Id.Value.StartsWith(own, StringComparison.Ordinal))];
        if (filed.Entry is NurseIsOut o)
            return agency with { Roster = agency.Roster with { Nurses = [.. agency.Roster.Nurses.Select(n => n.Id == o.Nurse ? WithoutLeave(n, o) : n)] } };
        if (others.Length == agency.Roster.Events.Length) return agency;
        AgencyRoster roster = agency.Roster with { Events = others };
        return agency with { Roster = roster, Files = CareFiles.Of(roster) };
    }

    private static NurseFile WithoutLeave(NurseFile nurse, NurseIsOut entry) =>
        nurse.Leaves.LastOrDefault(l => l.From == entry.From.Date && l.Through == entry.Through) is { } leave ? nurse with { Leaves = nurse.Leaves.Remove(leave) } : nurse;
}
