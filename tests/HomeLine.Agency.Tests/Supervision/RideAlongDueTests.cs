using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Tests.Supervision;

/// <summary>Who is supervised by when. The days are policy, our own default; state practice acts differ. Invented data.</summary>
public sealed class RideAlongDueTests
{
    private static readonly LocalDate Monday = DemoAgency.FirstDay;

    private static readonly NurseFile Practical = DemoAgency.Roster.Nurses.Single(n => n.Credential == "LPN");

    private static readonly NurseFile Registered = DemoAgency.Roster.Nurses.First(n => n.Credential == "RN");

    private static ImmutableArray<RideAlongDue> Due(NurseFile[] nurses, RideAlong[] made, WeekVisit[]? visits = null) => RideAlongDue.Of(
        nurses, made, visits ?? [], new Dictionary<string, LocalDate> { [Practical.Id] = Monday.PlusDays(3) }, DemoAgency.Files.Policy, Monday);

    private static RideAlong Made(NurseFile nurse, LocalDate day) => new()
    {
        Id = $"ride {day}",
        Nurse = nurse.Id,
        Supervisor = Registered.Id,
        SupervisorName = Registered.Name,
        Day = day,
        RecordedBy = "Hyssop",
        RecordedAt = DemoAgency.Now,
    };

    [Fact]
    public void Only_practical_nurses_and_trainees_are_supervised()
    {
        NurseFile trainee = Registered with { Id = "N90", Traits = ["trainee"] };

        Assert.Equal([trainee.Id, Practical.Id], Due([Registered, Practical, trainee], []).Select(d => d.Nurse));
        Assert.False(Supervised.BySupervisor(trainee));
        Assert.True(Supervised.BySupervisor(Registered));
    }

    [Fact]
    public void A_nurse_never_supervised_is_due_from_her_first_published_day_or_at_once()
    {
        NurseFile unseen = Practical with { Id = "N91" };

        ImmutableArray<RideAlongDue> due = Due([Practical, unseen], []);

        Assert.Equal([("N91", Monday), (Practical.Id, Monday.PlusDays(3))], due.Select(d => (d.Nurse, d.DueBy)));
        Assert.All(due, d => Assert.Equal(RideAlongDue.First, d.Reason.Code));
    }

    [Fact]
    public void A_nurse_supervised_before_is_due_the_days_of_policy_later()
    {
        NurseFile trainee = Practical with { Id = "N90", Traits = ["trainee"] };

        ImmutableArray<RideAlongDue> due = Due(
            [Practical, trainee], [Made(Practical, Monday.PlusDays(-70)), Made(Practical, Monday.PlusDays(-10)), Made(trainee, Monday.PlusDays(-15))]);

        // 60 days for a practical nurse; 14 for a trainee, even one with that licence.
        Assert.Equal([("N90", Monday.PlusDays(-1)), (Practical.Id, Monday.PlusDays(50))], due.Select(d => (d.Nurse, d.DueBy)));
        Assert.True(due[0].IsLate(Monday));
        Assert.False(due[1].IsLate(Monday));
        Assert.Contains("every 14 days (supervision.trainee.max)", due[0].Reason.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_visit_ahead_with_a_supervisor_is_shown_as_planned()
    {
        WeekVisit visit = DemoAgency.Published.Visits.First(v => v.Nurse == Practical.Id);

        Assert.Null(Due([Practical, Registered], [], [visit]).Single().Planned);
        Assert.Null(Due([Practical, Registered], [], [visit with { Second = Practical.Id }]).Single().Planned);
        Assert.Equal(visit.Id, Due([Practical, Registered], [], [visit with { Second = Registered.Id }]).Single().Planned?.Id);
    }
}
