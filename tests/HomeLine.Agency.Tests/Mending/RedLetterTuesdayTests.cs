using HomeLine.Agency.Absence;
using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Due;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>The troubles of the demonstration Tuesday through the real database. What should happen was worked out by hand; our own scenario.</summary>
public sealed class RedLetterTuesdayTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task With_a_nurse_out_what_cannot_wait_is_named_first_and_one_press_mends_the_day(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 6, 45));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"));

        Assert.Equal(["P04", "P12", "P06", "P01"], trouble.Offer!.CannotWait.Patients());
        Assert.Contains("09:30", trouble.Offer.CannotWait[0].Waits, StringComparison.Ordinal);
        Assert.InRange(trouble.Offer.Answers.Length, 1, 3);
        MendAnswer best = trouble.Offer.Answers[0];
        Assert.Empty(best.Unmet);
        Assert.Equal(4, best.Price.Families);
        Assert.All(trouble.Offer.Answers.Skip(1), other => Assert.False(other.Price.Critical < best.Price.Critical));
        AppliedTrouble applied = await agency.ApplyAsync(trouble);
        Assert.Equal(2, applied.Week!.Version);
        Assert.DoesNotContain(applied.Week.Visits, v => v.Day == Tuesday.Day && v.Nurse == "N1");
        WeekBoard board = (await agency.Ask<AskWeek>().AskAsync(Nurse, DemoAgency.FirstDay, false, Cancel)).Value;
        Assert.True(board.Check.Accepted, string.Join("\n", board.Check.Findings.Select(f => f.Reason.Sentence)));
        Assert.Equal(best.ToTell.Length, applied.ToTell.Length);
        await using AgencyDb db = agency.Open();
        Assert.Equal(best.ToTell.Length, await db.ToTell.CountAsync(Cancel));
        Assert.Equal("ill", (await db.Nurses.SingleAsync(n => n.Id == "N1", Cancel)).Leaves.Last().Reason);
    }

    [Fact]
    public async Task Stopped_while_answers_are_looked_for_nothing_is_offered_and_nothing_is_kept()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));
        await using AgencyDb db = agency.Open();
        AgencyAtHand now = (await AgencyAtHand.ReadAsync(db, agency.Ask<AgencyClock>(), Cancel)).Value;
        PlannedWeek week = await agency.WeekAsync();

        Assert.ThrowsAny<OperationCanceledException>(() =>
            PreparedTrouble.Of(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill"), now, week, "T1", new CancellationToken(canceled: true)));

        Assert.Empty(await db.Troubles.ToListAsync(Cancel));
    }

    [Fact]
    public async Task A_two_person_visit_is_named_with_the_others_when_both_days_are_lost()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day.PlusDays(1), "ill"));

        // The dose a nurse gives every day is critical and goes before the level.
        Assert.Equal(["P19", "P04", "P12"], trouble.Offer!.CannotWait.Patients().Take(3));
        Assert.Contains("two people", trouble.Offer.CannotWait.Single(b => b.Visit.Patient.Value == "P16").Waits, StringComparison.Ordinal);
    }

    [Fact]
    public async Task To_hospital_frees_time_which_is_offered_and_not_applied()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 52));
        await agency.PromiseP03Async();
        await agency.MoveClockAsync(9, 8, 12);

        FiledTrouble trouble = await agency.ReportAsync(new InHospital(new PatientId("P44"), Tuesday.Day, "hospital"));

        Assert.DoesNotContain((await agency.WeekAsync()).Visits, v => v.Patient.Value == "P44");
        MendAnswer earlier = Assert.Single(trouble.Offer!.Answers);
        Assert.Equal(new LocalTime(10, 8), (await agency.WeekAsync()).Visits.Single(v => v.Patient.Value == "P03").Start);
        // 31 minutes over the pass from 08:12.
        Assert.Equal(new LocalTime(8, 43), earlier.Of("P03").After!.Start);
        await agency.ApplyAsync(trouble);
        Assert.Equal(new LocalTime(8, 43), (await agency.WeekAsync()).Visits.Single(v => v.Patient.Value == "P03").Start);
    }

    [Fact]
    public async Task A_referral_for_the_evening_is_answered_with_who_decides_and_never_with_the_nurse_across_the_river()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 8, 20));

        FiledTrouble trouble = await agency.ReportAsync(new CanWeTakeIt(DemoReferral()));

        MendOffer offer = trouble.Offer!;
        Assert.Contains(offer.Facts, f => f.Contains("first dressing is due on Wed 10 Mar", StringComparison.Ordinal));
        Assert.Contains("hospital", offer.Answers[0].Decider, StringComparison.Ordinal);
        MendAnswer overtime = Assert.Single(offer.Answers, a => a.Title.StartsWith("Juniper Brasslock, Tue 9 Mar 16:3", StringComparison.Ordinal));
        Assert.Contains("overtime", overtime.Decider, StringComparison.Ordinal);
        Assert.DoesNotContain(offer.Answers, a => a.Title.StartsWith("Bramble", StringComparison.Ordinal) && a.Price.Families == 0);
        Assert.StartsWith("Decline", offer.Answers[^1].Title, StringComparison.Ordinal);
        Assert.All(offer.Answers, a => Assert.NotEmpty(a.Decider));
        Assert.Equal("decider-missing", (await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, trouble.Id, "A", " ", Cancel)).Refusal?.Code);
        Assert.Null((await agency.ApplyAsync(trouble)).Week);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_dose_taken_before_the_level_cancels_the_level_and_not_the_dressing(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 9, 10));

        FiledTrouble trouble = await agency.ReportAsync(new DoseTaken
        {
            Patient = new PatientId("P04"),
            Line = new LineId("P04-1"),
            Caller = "patient",
            Answers = Tuesday.AllNoBut(),
            TakenAt = DemoAgency.At(9, 8, 30),
        });

        WeekVisit after = trouble.Offer!.Answers.Single().Of("P04").After!;
        Assert.Equal(("N1", new LocalTime(9, 31)), (after.Nurse, after.Start));
        Assert.DoesNotContain(after.Care, c => c.Key.Contains("P04-level", StringComparison.Ordinal));
        Assert.Contains(after.Care, c => c.Key.Contains("Dressing", StringComparison.Ordinal));
        Assert.Contains(trouble.Offer.ToTell, p => p.Who == "Pharmacist");
        Assert.Contains(trouble.Offer.Facts, f => f.Contains("Wed 10 Mar between 09:30 and 09:55", StringComparison.Ordinal));
        Assert.Equal(DemoAgency.At(9, 22, 0), trouble.Offer.Next!.By);
        await agency.ApplyAsync(trouble);
        Assert.Single((await agency.WeekAsync()).Visits, v => v.Patient.Value == "P04");
    }

    [Fact]
    public async Task When_a_car_dies_what_is_due_today_is_done_today_with_its_own_kit_and_the_child_waits_for_Thursday()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 10, 15));

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.At(new LocalTime(10, 15)), Tuesday.Day, "car"));

        Assert.Equal(["P05", "P39"], trouble.Offer!.CannotWait.Patients());
        MendAnswer best = trouble.Offer.Answers[0];
        Assert.Equal(Tuesday.Day, best.Of("P05").After!.Day);
        Assert.NotEqual("N4", best.Of("P05").After!.Nurse);
        Assert.Equal(new LocalDate(2027, 3, 11), best.Of("P39").After!.Day);
        Assert.Contains(best.Cautions, c => c.Contains("without chlorhexidine", StringComparison.Ordinal));
        Assert.Contains(best.ToTell, p => p.Who.Contains("Nasturt", StringComparison.Ordinal) && p.Number.Length > 0);
        await agency.ApplyAsync(trouble);
        Assert.Contains((await agency.WeekAsync()).Visits, v => v.Patient.Value == "P40" && v.Nurse == "N4" && v.Day == Tuesday.Day);
        await agency.MoveClockAsync(9, 11, 20);
        FiledTrouble late = await agency.ReportAsync(new RunsLate("N2", 45));
        Assert.DoesNotContain("P40", late.Offer!.CannotWait.Patients());
    }

    [Fact]
    public async Task A_nurse_forty_five_minutes_late_is_a_call_list_of_one()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 11, 20));

        FiledTrouble trouble = await agency.ReportAsync(new RunsLate("N2", 45));

        MendAnswer calls = trouble.Offer!.Answers[0];
        VisitChange only = Assert.Single(calls.Changes);
        Assert.Equal(("P28", new LocalTime(12, 24)), (only.After!.Patient.Value, only.After.Start));
        Assert.Single(calls.ToTell, p => p.Nurse is null);
        Assert.Contains(trouble.Offer.Facts, f => f.Contains("Cicelia", StringComparison.Ordinal) && f.Contains("12:24", StringComparison.Ordinal));
        Assert.All(trouble.Offer.Answers.Skip(1), swap => Assert.NotEqual("N2", swap.Of("P28").After!.Nurse));
    }

    [Fact]
    public async Task When_the_pass_closes_the_needle_is_changed_on_its_day_and_the_courier_is_spoken_of()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 13, 45));

        FiledTrouble trouble = await agency.ReportAsync(new RoadShut(
            ["Larch Pass"], [], new LocalDateTime(2027, 3, 10, 12, 0), new LocalDateTime(2027, 3, 11, 0, 0), "snow"));

        Assert.Contains("P29", trouble.Offer!.CannotWait.Patients());
        Assert.Equal(new LocalDate(2027, 3, 10), trouble.Offer.Answers[0].Of("P29").After!.Day);
        Assert.Contains(trouble.Offer.Facts, f => f.Contains("14:00 courier", StringComparison.Ordinal) && f.Contains("Quillwort", StringComparison.Ordinal));
        Assert.Empty(trouble.Offer.Answers[0].Unmet);
        // The other nurse would come later still: named, and not among the answers.
        Assert.Contains(trouble.Offer.RuledOut, beaten => beaten.Contains("Damson", StringComparison.Ordinal) && beaten.Contains("Juniper Brasslock", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_alarm_ended_on_the_phone_is_closed_and_touches_no_clock()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 2, 10));

        FiledTrouble trouble = await agency.ReportAsync(Alarm("P36", solved: true));

        Assert.Equal(TroubleState.Closed, trouble.State);
        Assert.Empty(trouble.Offer!.Answers);
        PatientOverview patient = (await agency.Ask<AskPatient>().AskAsync(Nurse, new PatientId("P36"), Cancel)).Value;
        Assert.Contains(patient.Ledger, e => e.Kind == LineEventKind.PhoneCall);
        Assert.Equal(new LocalDate(2027, 3, 11), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_heart_infusion_whose_alarm_does_not_end_is_for_a_licensed_person_and_gets_no_time(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 9, 0));

        TroubleResult result = (await agency.Ask<MendTrouble>().ReportAsync(TestAgency.Coordinator, Alarm("P23", solved: false), Cancel)).Value;

        Assert.Equal(TroubleState.Stopped, result.Filed.State);
        Assert.Null(result.Filed.Offer);
        Assert.NotEmpty(result.Stop!.Stopped!.Wording);
        Assert.Contains(result.Stop.Stopped.ToTell, p => p.Who.Contains("Clinical manager", StringComparison.Ordinal));
        Assert.Equal("no-offer", (await agency.Ask<MendTrouble>().ApplyAsync(TestAgency.Coordinator, result.Filed.Id, "A", "because", Cancel)).Refusal?.Code);
        Assert.Contains((await agency.Ask<AskDecisions>().ListAsync(ClinicalLead, Cancel)).Value.Open, row => row.Question.Patient.Value == "P23");
    }

    [Fact]
    public async Task An_alarm_that_does_not_end_gets_a_visit_of_its_own_today()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 9, 0));

        FiledTrouble trouble = await agency.ReportAsync(Alarm("P08", solved: false));

        Assert.InRange(trouble.Offer!.Answers.Length, 1, 3);
        Assert.All(trouble.Offer.Answers, a => Assert.Equal(Tuesday.Day, a.Of("P08").After!.Day));
        AppliedTrouble applied = await agency.ApplyAsync(trouble);
        Assert.Contains(applied.Week!.Visits, v => v.Patient.Value == "P08" && v.Care.Any(c => c.Label.StartsWith("pump check", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_patient_put_on_hold_leaves_no_visit_standing()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 7, 0));

        KeptHold kept = (await agency.Ask<KeepAbsence>().HoldAsync(TestAgency.Coordinator, new HoldEntry(new PatientId("P06"), false, null, new LocalDate(2027, 3, 11), "with the daughter"), Cancel)).Value;

        Assert.Equal([9, 11], kept.Lifted.Select(v => v.Day.Day));
        Assert.Equal([13], (await agency.WeekAsync()).Visits.Where(v => v.Patient.Value == "P06").Select(v => v.Day.Day));
        await using AgencyDb db = agency.Open();
        Assert.Contains("Juniper", (await db.ToTell.SingleAsync(Cancel)).Person.Who, StringComparison.Ordinal);
    }

    private static PumpAlarm Alarm(string patient, bool? solved) => new()
    {
        Patient = new PatientId(patient),
        Line = new LineId($"{patient}-1"),
        Caller = "spouse",
        Answers = Tuesday.AllNoBut(),
        Alarm = AlarmKind.Air,
        Solved = solved,
    };

    private static ReferralFacts DemoReferral() => new()
    {
        Name = "Vervain Thistlecomb",
        Home = new MapPoint(24.5, 13.2),
        State = "Marrow",
        HomeAt = new LocalDateTime(2027, 3, 9, 13, 0),
        NextDoseAt = new LocalDateTime(2027, 3, 9, 20, 0),
        SuppliesAt = new LocalDateTime(2027, 3, 9, 16, 30),
        Line = LineKind.Picc,
        PlacedOn = new LocalDate(2027, 3, 8),
        Dressing = DressingKind.GauzeUnderFilm,
        TipConfirmed = true,
        FirstDoseGiven = true,
        SomebodyLearns = true,
        OrdersReceived = true,
    };
}
