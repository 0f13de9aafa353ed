using HomeLine.Agency.Mending;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>The other days of the demonstration week, and the days on which everything goes wrong. Our own scenario, invented throughout.</summary>
public sealed class RestOfTheWeekTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static AtTheDoor NobodyHome(int day, string patient, params DoorTry[] tries) => new(Tuesday.Visit(day, patient), DoorAnswer.NobodyHome, [.. tries], "");

    private static readonly DoorTry Rang = new(new LocalTime(14, 10), "rang and knocked");
    private static readonly DoorTry Phoned = new(new LocalTime(14, 25), "phoned, no answer");

    [Fact]
    public async Task Nobody_home_once_sets_the_next_step_and_misses_nothing_yet()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 14, 12));

        FiledTrouble trouble = await agency.ReportAsync(NobodyHome(8, "P31", Rang));

        Assert.Equal(TroubleState.Open, trouble.State);
        Assert.Equal(DemoAgency.At(8, 14, 27), trouble.Offer!.Next!.By);
        await using AgencyDb db = agency.Open();
        Assert.Equal(1, await db.LineEvents.CountAsync(e => e.Patient == new PatientId("P31") && e.Kind == LineEventKind.Missed, Cancel));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Nobody_home_twice_is_missed_and_the_practitioner_is_told(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(8, 14, 30));

        FiledTrouble trouble = await agency.ReportAsync(NobodyHome(8, "P31", Rang, Phoned));

        Assert.Contains(trouble.Offer!.ToTell, p => p.Who.StartsWith("Practitioner", StringComparison.Ordinal));
        await using AgencyDb db = agency.Open();
        LineEvent missed = await db.LineEvents.SingleAsync(e => e.Id == new EventId($"{trouble.Id}-1"), Cancel);
        Assert.Equal((LineEventKind.Missed, "P31-1"), (missed.Kind, missed.Line!.Value.Value));
        Assert.Contains("rang and knocked", missed.Note, StringComparison.Ordinal);
        Assert.NotEmpty(trouble.Offer.Answers);
        AppliedTrouble applied = await agency.ApplyAsync(trouble);
        Assert.Single(applied.Week!.Visits, v => v.Patient.Value == "P31");
        Assert.DoesNotContain(applied.Week.Visits, v => v.Id == Tuesday.Visit(8, "P31"));
    }

    [Fact]
    public async Task Refused_again_waits_for_a_clinician_and_finds_no_time()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 12, 40));

        FiledTrouble trouble = await agency.ReportAsync(new AtTheDoor(Tuesday.Visit(8, "P30"), DoorAnswer.Refused, [], "Does not want it touched."));

        Assert.Empty(trouble.Offer!.Answers);
        Assert.Contains(trouble.Offer.ToTell, p => p.Who.Contains("Clinical manager", StringComparison.Ordinal));
        Assert.Contains(trouble.Offer.Facts, f => f.Contains("interval goes on", StringComparison.Ordinal));
        await using AgencyDb db = agency.Open();
        Assert.Equal(2, await db.LineEvents.CountAsync(e => e.Patient == new PatientId("P30") && e.Kind == LineEventKind.Refused, Cancel));
    }

    [Fact]
    public async Task An_unsafe_scene_holds_the_visit_and_looks_for_no_other()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 12, 30));

        FiledTrouble trouble = await agency.ReportAsync(new AtTheDoor(Tuesday.Visit(8, "P33"), DoorAnswer.Unsafe, [], "Shouting inside."));

        Assert.Empty(trouble.Offer!.Answers);
        Assert.Contains("Leave now", trouble.Offer.Aloud[0], StringComparison.Ordinal);
        Assert.NotNull((await agency.WeekAsync()).Visits.Single(v => v.Patient.Value == "P33").Held);
        Assert.Equal("door-note-missing", (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, new AtTheDoor(Tuesday.Visit(8, "P33"), DoorAnswer.Unsafe, [], " "), Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task Without_the_nurse_of_the_long_stays_two_patients_are_left_for_lack_of_skill_and_it_is_said()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 6, 30));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N7", new LocalDateTime(2027, 3, 10, 0, 0), new LocalDate(2027, 3, 12), "ill"));

        MendAnswer best = trouble.Offer!.Answers[0];
        Assert.Contains(best.Unmet, u => u.Who.StartsWith("Teasel", StringComparison.Ordinal));
        Assert.Contains(best.Unmet, u => u.Who.StartsWith("Indigo", StringComparison.Ordinal));
        Assert.All(best.Unmet, u => Assert.NotEmpty(u.Because));
        Assert.Contains(trouble.Offer.PhoneChecks, p => p.Who.Contains("Teasel", StringComparison.Ordinal));
        Assert.Contains(best.ToTell, p => p.Who.Contains("Clinical manager", StringComparison.Ordinal));
    }

    [Fact]
    public async Task With_every_crossing_closed_those_beyond_are_phoned()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 0));

        FiledTrouble trouble = await agency.ReportAsync(new RoadShut(
            [.. DemoAgency.Roster.Map.Barriers.SelectMany(b => b.Crossings).Select(c => c.Name)], [], new LocalDateTime(2027, 3, 9, 6, 0), new LocalDateTime(2027, 3, 10, 0, 0), "flood"));

        Assert.NotEmpty(trouble.Offer!.CannotWait);
        Assert.NotEmpty(trouble.Offer.PhoneChecks);
        Assert.All(trouble.Offer.Answers[0].Changes.Where(c => c.After is null), c =>
            Assert.Contains(trouble.Offer.PhoneChecks, p => p.Who.StartsWith(DemoAgency.Roster.Patients.Single(x => x.Id == c.Before!.Patient).Name, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Twelve_referrals_on_a_Friday_each_get_their_answer()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(12, 13, 0));
        for (int i = 0; i < 12; i++)
        {
            FiledTrouble trouble = await agency.ReportAsync(new CanWeTakeIt(new ReferralFacts { Name = $"Referral {i}", HomeAt = new LocalDateTime(2027, 3, 12, 17, 0), Line = LineKind.Picc, Home = new(24 + (i * 0.1), 13) }));
            Assert.Contains(trouble.Offer!.Facts, f => f.StartsWith("Ask:", StringComparison.Ordinal));
            Assert.StartsWith("Decline", trouble.Offer.Answers[^1].Title, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_week_that_changed_meanwhile_is_refused_with_what_changed()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        FiledTrouble absent = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"));
        FiledTrouble other = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.AtMidnight(), Tuesday.Day, "car"));
        await agency.ApplyAsync(other, reason: "garage called");

        Refusal refusal = (await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, absent.Id, "A", "", Cancel)).Refusal!;

        Assert.Equal("stale-week", refusal.Code);
        Assert.Contains("version 2", refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains("garage called", refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_has_come_too_close_is_not_moved()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52));
        await agency.PromiseP03Async();
        await agency.MoveClockAsync(9, 8, 12);
        FiledTrouble freed = await agency.ReportAsync(new InHospital(new PatientId("P44"), Tuesday.Day, "hospital"));
        await agency.MoveClockAsync(9, 9, 30);

        Assert.Equal("frozen-since", (await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, freed.Id, "A", "asked", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_call_out_by_mistake_is_taken_back_with_its_absence()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"));

        Assert.Equal("close-reason-missing", (await agency.Ask<MendTrouble>().CloseAsync(TestAgency.Coordinator, trouble.Id, " ", Cancel)).Refusal?.Code);
        Assert.Equal(TroubleState.Closed, (await agency.Ask<MendTrouble>().CloseAsync(TestAgency.Coordinator, trouble.Id, "wrong nurse", Cancel)).Value.State);

        await using AgencyDb db = agency.Open();
        Assert.Empty((await db.Nurses.SingleAsync(n => n.Id == "N1", Cancel)).Leaves);
    }

    [Theory]
    [InlineData("nurse-not-found")]
    [InlineData("out-ends-before-start")]
    [InlineData("late-out-of-range")]
    [InlineData("closure-names-nothing")]
    [InlineData("closure-ends-before-start")]
    [InlineData("closure-unknown-place")]
    [InlineData("visit-not-found")]
    [InlineData("door-tries-missing")]
    [InlineData("script-first")]
    [InlineData("screen-incomplete")]
    public async Task What_cannot_be_is_refused_and_nothing_is_kept(string code)
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        LocalDateTime at = Tuesday.Day.At(new LocalTime(12, 0));
        var alarm = new PumpAlarm { Patient = new PatientId("P08"), Line = new LineId("P08-1"), Caller = "spouse", Answers = Tuesday.AllNoBut(), Alarm = AlarmKind.Air };
        TroubleEntry entry = code switch
        {
            "nurse-not-found" => new NurseIsOut("N99", at, Tuesday.Day, ""),
            "out-ends-before-start" => new NurseIsOut("N1", at, Tuesday.Day.PlusDays(-1), ""),
            "late-out-of-range" => new RunsLate("N1", 0),
            "closure-names-nothing" => new RoadShut([], [], at, at.PlusHours(1), ""),
            "closure-ends-before-start" => new RoadShut(["Larch Pass"], [], at, at, ""),
            "closure-unknown-place" => new RoadShut(["No such bridge"], [], at, at.PlusHours(1), ""),
            "visit-not-found" => new AtTheDoor("none", DoorAnswer.NobodyHome, [], ""),
            "door-tries-missing" => NobodyHome(9, "P12"),
            "script-first" => alarm,
            _ => alarm with { Answers = alarm.Answers.Clear(), Solved = true },
        };

        Assert.Equal(code, (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, entry, Cancel)).Refusal?.Code);

        await using AgencyDb db = agency.Open();
        Assert.Equal(0, await db.Troubles.CountAsync(Cancel));
    }
}
