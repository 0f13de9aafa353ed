using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Looks back on the published weeks before the one worked on: who had the evenings, the weekends, the long visits.</summary>
public sealed class AskFairness(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>Needs <see cref="AgencyAction.PlanWeek"/>. How many weeks back is policy.</summary>
    public async Task<Outcome<FairLook>> AskAsync(Actor actor, LocalDate firstDay, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        WorkingWeek week = await weeks.OfAsync(db, read.Value, firstDay, cancel);
        var rules = LoadRules.Of(read.Value.Files.Policy, firstDay);
        return FairLook.Of(read.Value.Roster, await BeforeAsync(db, firstDay, rules.WeeksBack, cancel), week.Week, rules);
    }

    /// <summary>The published weeks before a week, as many as there are, the oldest first.</summary>
    internal static async Task<ImmutableArray<PlannedWeek>> BeforeAsync(AgencyDb db, LocalDate firstDay, int weeks, CancellationToken cancel)
    {
        var before = ImmutableArray.CreateBuilder<PlannedWeek>();
        for (int back = weeks; back > 0; back--)
        {
            if (await WeekStore.PublishedAsync(db, firstDay.PlusWeeks(-back), cancel) is { } week) before.Add(week.Week);
        }

        return before.ToImmutable();
    }
}
