using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>Visits of the demonstration week recorded through the real database; invented data throughout.</summary>
public sealed class RecordVisitTests(PostgresCluster cluster)
{
    private const string ChangeForP12 = "2027-03-09-P12";
    private const string ChangeForP24 = "2027-03-10-P24";
    private static readonly PatientId P12 = new("P12");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Task<Outcome<VisitRecord>> SignAsync(TestAgency agency, VisitEntry entry, Actor? nurse = null) =>
        agency.Ask<RecordVisit>().SignAsync(nurse ?? Juniper, entry, Cancel);

    private static async Task<PatientOverview> PatientAsync(TestAgency agency, PatientId patient) => (await agency.Ask<AskPatient>().AskAsync(Juniper, patient, Cancel)).Value;

    /// <summary>Film of Wednesday 3 March changed on Tuesday 9: seven civil days later is Tuesday 16 (SHEA/IDSA/APIC 2022: at least every 7 days).</summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_signed_visit_restarts_the_clocks_from_when_the_care_was_done(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);
        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value;
        Assert.Empty(check.Faults);
        Assert.Empty(check.Questions);

        VisitRecord record = (await SignAsync(agency, entry)).Value;

        Assert.Equal(DemoAgency.At(9, 8, 10), record.ArrivedAt);
        PatientOverview patient = await PatientAsync(agency, P12);
        Assert.Equal(new LocalDate(2027, 3, 16), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        Assert.Equal(new LocalDate(2027, 3, 16), patient.Due.First(r => r.Window.Item == CareItem.Connector).Window.LastDay);
        RecordView view = (await agency.Ask<AskVisit>().RecordAsync(Juniper, record.Id, Cancel)).Value;
        Assert.Equal(check.Moved.Select(m => (m.What, m.After)), view.Moved.Select(m => (m.What, m.After)));
        Assert.Contains(view.Moved, m => m.What.StartsWith("Dressing", StringComparison.Ordinal) && m.After == "Sun 14 Mar to Tue 16 Mar");
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_same_form_sent_twice_counts_once(Provider provider)
    {
        await using TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);
        int before = (await PatientAsync(agency, P12)).Ledger.Length;

        string first = (await SignAsync(agency, entry)).Value.Id;
        int after = (await PatientAsync(agency, P12)).Ledger.Length;
        string second = (await SignAsync(agency, entry with { Note = "sent again after the tunnel" })).Value.Id;

        Assert.Equal(first, second);
        Assert.True(after > before);
        Assert.Equal(after, (await PatientAsync(agency, P12)).Ledger.Length);
        Assert.Equal("submission-taken", (await SignAsync(agency, entry, Nurse)).Refusal?.Code);
    }

    [Theory]
    [InlineData(NotDoneReason.Refused, LineEventKind.Refused)]
    [InlineData(NotDoneReason.Missed, LineEventKind.Missed)]
    [InlineData(NotDoneReason.NobodyHome, LineEventKind.Missed)]
    [InlineData(NotDoneReason.Cancelled, LineEventKind.NotDone)]
    [InlineData(NotDoneReason.HeldByPrescriber, LineEventKind.NotDone)]
    [InlineData(NotDoneReason.Other, LineEventKind.NotDone)]
    public async Task Care_that_was_not_done_moves_no_clock_whatever_the_reason(NotDoneReason why, LineEventKind kept)
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        LocalDate before = (await PatientAsync(agency, P12)).Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay;
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);
        entry = entry with { Items = [.. entry.Items.Select(i => i.NotDone(why, "as told at the door"))], Draws = [] };

        VisitRecord record = (await SignAsync(agency, entry)).Value;

        PatientOverview patient = await PatientAsync(agency, P12);
        Assert.Equal(before, patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        Assert.All(patient.Ledger.Where(e => record.Events.Contains(e.Id) && e.Kind != LineEventKind.SiteChecked && e.Kind != LineEventKind.Measured), e => Assert.Equal(kept, e.Kind));
        Assert.Equal(why, record.Entry.Items[0].Why);
        VisitList waiting = (await agency.Ask<AskVisitList>().AskAsync(Juniper, Cancel)).Value;
        Assert.Equal(why == NotDoneReason.HeldByPrescriber ? 0 : 1, waiting.Notices.Length);
    }

    [Fact]
    public async Task The_practitioner_stays_on_the_list_until_somebody_says_who_was_told_and_what()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10)).ButItem(CareItem.Dressing, i => i.NotDone(NotDoneReason.Refused, "wants to wait"));
        Assert.True((await SignAsync(agency, entry)).Succeeded);
        var telling = agency.Ask<TellPractitioner>();
        PractitionerNotice open = Assert.Single((await agency.Ask<AskVisitList>().AskAsync(Juniper, Cancel)).Value.Notices).Notice;
        Assert.Contains("Refused (wants to wait): Dressing", open.What, StringComparison.Ordinal);

        Assert.Equal("told-to-missing", (await telling.TellAsync(Juniper, open.Id, " ", "refused", Cancel)).Refusal?.Code);
        Assert.Equal("said-missing", (await telling.TellAsync(Juniper, open.Id, "Practitioner F", "", Cancel)).Refusal?.Code);
        Assert.True((await telling.TellAsync(Juniper, open.Id, "Practitioner F", "refused today, again on Thursday", Cancel)).Succeeded);

        Assert.Empty((await agency.Ask<AskVisitList>().AskAsync(Juniper, Cancel)).Value.Notices);
        Assert.Equal("notice-closed", (await telling.TellAsync(Juniper, open.Id, "Somebody else", "other words", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_visit_that_did_half_leaves_the_other_half_due()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10)).ButItem(CareItem.Connector, i => i.NotDone(NotDoneReason.Other, "none in the bag"));

        Assert.True((await SignAsync(agency, entry)).Succeeded);

        PatientOverview patient = await PatientAsync(agency, P12);
        Assert.Equal(new LocalDate(2027, 3, 16), patient.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay);
        Assert.Equal(new LocalDate(2027, 3, 10), patient.Due.First(r => r.Window.Item == CareItem.Connector).Window.LastDay);
    }

    [Fact]
    public async Task What_is_missing_or_cannot_be_is_named_at_its_field_and_nothing_is_stored()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 8, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 7, 0);
        int before = (await PatientAsync(agency, P12)).Ledger.Length;
        async Task<string[]> Faults(VisitEntry one) => [.. (await agency.Ask<RecordVisit>().CheckAsync(Juniper, one, null, Cancel)).Value.Faults.Select(f => f.Code)];

        Assert.Contains(VisitCodes.ArrivalMissing, await Faults(entry with { Arrived = null }));
        Assert.Contains(VisitCodes.InTheFuture, await Faults(entry with { Arrived = new LocalTime(8, 30), Left = null }));
        Assert.Contains(VisitCodes.SignsUnasked, await Faults(entry with { SignsAsked = false }));
        Assert.Contains(VisitCodes.ItemUnsaid, await Faults(entry.ButItem(CareItem.Dressing, i => i with { Standing = ItemStanding.Unsaid })));
        Assert.Contains(VisitCodes.WhyMissing, await Faults(entry.ButItem(CareItem.Dressing, i => i.NotDone(NotDoneReason.Other))));
        Assert.Contains(VisitCodes.SiteUnsaid, await Faults(entry.ButLine(l => l with { Looked = false })));
        Assert.Contains(VisitCodes.DrawMissing, await Faults(entry with { Draws = [] }));
        Assert.Contains(VisitCodes.UnplannedWithoutReason, await Faults(entry with { Visit = null }));
        Assert.Contains(RecordingCodes.LengthOutOfRange, await Faults(entry.ButLine(l => l with { OutsideLength = 61 })));
        Assert.Equal("visit-incomplete", (await SignAsync(agency, entry with { SignsAsked = false })).Refusal?.Code);
        Assert.Equal(before, (await PatientAsync(agency, P12)).Ledger.Length);
    }

    [Fact]
    public async Task A_question_is_answered_before_it_is_signed_and_the_answer_stands_in_the_ledger()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10)).ButLine(l => l with { OutsideLength = 1.5m, InInches = true });
        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value;
        Assert.Contains(check.Questions, q => q.Code == RecordingCodes.LengthInInches);
        Assert.Equal("visit-unanswered", (await SignAsync(agency, entry)).Refusal?.Code);

        VisitRecord record = (await SignAsync(agency, await entry.AnsweredAsync(agency, Juniper, "the tape has inches"))).Value;

        Assert.Contains(record.Answered, a => a.Code == RecordingCodes.LengthInInches && a.Answer == "the tape has inches");
        Assert.Contains((await PatientAsync(agency, P12)).Ledger, e => e.OutsideLengthCm == 3.8m);
    }

    /// <summary>P24: 2 cm outside at insertion, 3 cm last time, 4 cm now: growth beyond the step of 1 cm locks the line.</summary>
    [Fact]
    public async Task A_line_that_grew_says_whom_to_call_locks_and_books_nothing()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(10, 18, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, ChangeForP24, 10, 15, 54)).ButLine(l => l with { OutsideLength = 4 });
        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value;
        Assert.NotNull(check.Stop);
        Assert.Contains(check.Stop.Wording, w => w.Contains("555-", StringComparison.Ordinal));

        VisitRecord record = (await SignAsync(agency, await entry.AnsweredAsync(agency, Juniper))).Value;

        RecordView view = (await agency.Ask<AskVisit>().RecordAsync(Juniper, record.Id, Cancel)).Value;
        Assert.Contains(view.Locks, l => l.Contains("may have moved", StringComparison.Ordinal));
        Assert.Contains(view.ToTell, t => t.Person.Who == "Clinical manager on duty");
        Assert.Contains((await PatientAsync(agency, new PatientId("P24"))).Decisions, d => d.Code == DecisionCodes.LengthGrew);
    }

    [Fact]
    public async Task Pus_at_the_site_stops_like_a_call_locked_held_and_told_and_the_visit_itself_is_kept()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(8, 14, 0));
        VisitEntry entry = (await DoneAsync(agency, Juniper, "2027-03-08-P19", 8, 9, 38)).ButLine(l => l with { Found = SiteFinding.Pus });
        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value;
        Assert.Contains(check.Stop!.Wording, w => w.StartsWith("Do not use the line", StringComparison.Ordinal));

        VisitRecord record = (await SignAsync(agency, await entry.AnsweredAsync(agency, Juniper))).Value;

        Assert.NotNull(record.Stopped);
        RecordView view = (await agency.Ask<AskVisit>().RecordAsync(Juniper, record.Id, Cancel)).Value;
        Assert.Contains(view.Locks, l => l.Contains("until a licensed person releases it", StringComparison.Ordinal));
        Assert.Contains(view.ToTell, t => t.Person.Who == "Clinical manager on duty");
        await using AgencyDb db = agency.Open();
        var visits = (await WeekStore.PublishedAsync(db, DemoAgency.FirstDay, Cancel))!.Week.Visits.Where(v => v.Patient.Value == "P19").ToList();
        Assert.Equal(DemoAgency.Published.Visits.Count(v => v.Patient.Value == "P19"), visits.Count);
        Assert.Null(visits.Single(v => v.Id == "2027-03-08-P19").Held);
        Assert.All(visits.Where(v => v.Day > new LocalDate(2027, 3, 8)), v => Assert.NotNull(v.Held));
        Assert.Equal(ReportOutcome.Stopped, (await db.Reports.SingleAsync(Cancel)).Outcome);
    }

    [Fact]
    public async Task Words_in_the_note_that_may_mean_a_fever_are_asked_about()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);

        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry with { Note = "felt hot and shivered last night" }, null, Cancel)).Value;

        Assert.Contains(check.Questions, q => q.Code == VisitCodes.WordsThatAsk && q.Sentence.Contains("38.0", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Two_people_record_the_same_care_and_both_are_kept_the_latest_counts()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 18, 0));
        Assert.True((await SignAsync(agency, await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10))).Succeeded);
        VisitEntry second = (await DoneAsync(agency, Nurse, ChangeForP12, 9, 16, 0)).ButLine(l => l with { OutsideLength = null });

        VisitRecord record = (await SignAsync(agency, await second.AnsweredAsync(agency, Nurse), Nurse)).Value;

        Assert.Contains(record.Flags, f => f.Contains("Juniper Brasslock recorded", StringComparison.Ordinal) && f.Contains("Both are kept", StringComparison.Ordinal));
        Assert.Equal(2, (await PatientAsync(agency, P12)).Ledger.Count(e => e.Kind == LineEventKind.DressingChanged && e.Performed!.Value.Date == new LocalDate(2027, 3, 9)));
        Assert.Single((await agency.Ask<AskVisit>().RecordAsync(Juniper, record.Id, Cancel)).Value.Others);
    }

    [Fact]
    public async Task A_visit_written_down_the_day_after_tomorrow_is_marked_late_and_a_clock_that_is_wrong_is_asked_about()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(11, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);
        entry = entry with { DeviceNow = agency.Clock.GetCurrentInstant() - Duration.FromHours(3) };

        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(Juniper, entry, null, Cancel)).Value;

        Assert.Contains(check.Flags, f => f.StartsWith("Late entry", StringComparison.Ordinal));
        Assert.Contains(check.Questions, q => q.Code == VisitCodes.DeviceClock && q.Sentence.Contains("180 minutes", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Who_may_not_record_is_refused()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, ChangeForP12, 9, 8, 10);

        Assert.Equal("not-allowed", (await SignAsync(agency, entry, TestAgency.Coordinator)).Refusal?.Code);
        Assert.Equal("not-allowed", (await SignAsync(agency, entry, TestAgency.Administrator)).Refusal?.Code);
        Assert.Equal("visit-unknown", (await agency.Ask<AskVisit>().PlannedAsync(Juniper, "2027-03-09-P99", Cancel)).Refusal?.Code);
    }
}
