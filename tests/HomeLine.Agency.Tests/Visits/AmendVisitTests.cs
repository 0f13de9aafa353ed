using HomeLine.Agency.Due;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>A signed visit is amended, never changed: the original stays readable and the clocks go by the correction.</summary>
public sealed class AmendVisitTests(PostgresCluster cluster)
{
    private const string Visit = "2027-03-09-P12";
    private static readonly PatientId P12 = new("P12");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<DueRow> DressingAsync(TestAgency agency) =>
        (await agency.Ask<AskPatient>().AskAsync(Juniper, P12, Cancel)).Value.Due.First(r => r.Window.Item == CareItem.Dressing);

    [Fact]
    public async Task The_material_was_gauze_so_the_clock_becomes_two_days_and_the_first_record_can_still_be_read()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, Visit, 9, 8, 10);
        VisitRecord first = (await agency.Ask<RecordVisit>().SignAsync(Juniper, entry, Cancel)).Value;
        VisitEntry right = entry.ButItem(CareItem.Dressing, i => i with { Dressing = DressingKind.Gauze }) with { Submission = "amended", AmendedBecause = "it oozed, gauze went on" };

        VisitRecord amended = (await agency.Ask<RecordVisit>().AmendAsync(Juniper, first.Id, right, Cancel)).Value;

        Assert.Equal(new LocalDate(2027, 3, 11), (await DressingAsync(agency)).Window.LastDay);
        Assert.Equal(first.Id, amended.Amends);
        RecordView before = (await agency.Ask<AskVisit>().RecordAsync(Juniper, first.Id, Cancel)).Value;
        Assert.Equal(amended.Id, before.AmendedBy);
        Assert.Equal(DressingKind.Film, before.Record.Entry.Items.First(i => i.Item == CareItem.Dressing).Dressing);
        LineEvent[] ledger = [.. (await agency.Ask<AskPatient>().AskAsync(Juniper, P12, Cancel)).Value.Ledger];
        LineEvent correction = Assert.Single(ledger, e => e.Voids is not null);
        Assert.Equal(LineEventKind.DressingChanged, correction.Kind);
        Assert.Contains(ledger, e => e.Id == correction.Voids && e.Dressing == DressingKind.Film);
        Assert.Contains("it oozed", correction.Note, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Care_that_was_never_done_is_voided_and_due_again()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        LocalDate due = (await DressingAsync(agency)).Window.LastDay;
        VisitEntry entry = await DoneAsync(agency, Juniper, Visit, 9, 8, 10);
        VisitRecord first = (await agency.Ask<RecordVisit>().SignAsync(Juniper, entry, Cancel)).Value;
        VisitEntry right = entry.ButItem(CareItem.Dressing, i => i.NotDone(NotDoneReason.Refused)) with { Submission = "amended", AmendedBecause = "ticked by mistake" };

        Assert.True((await agency.Ask<RecordVisit>().AmendAsync(Juniper, first.Id, right, Cancel)).Succeeded);

        Assert.Equal(due, (await DressingAsync(agency)).Window.LastDay);
    }

    [Fact]
    public async Task Only_who_signed_or_a_clinical_manager_amends_once_and_with_a_reason()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        VisitEntry entry = await DoneAsync(agency, Juniper, Visit, 9, 8, 10);
        VisitRecord first = (await agency.Ask<RecordVisit>().SignAsync(Juniper, entry, Cancel)).Value;
        VisitEntry again = entry with { Submission = "amended", AmendedBecause = "a word was missing", Note = "a word" };
        var recording = agency.Ask<RecordVisit>();

        Assert.Equal("record-not-yours", (await recording.AmendAsync(Nurse, first.Id, again, Cancel)).Refusal?.Code);
        Assert.Equal("amendment-reason-missing", (await recording.AmendAsync(Juniper, first.Id, again with { AmendedBecause = "" }, Cancel)).Refusal?.Code);
        Assert.Equal("record-unknown", (await recording.AmendAsync(Juniper, "V99", again, Cancel)).Refusal?.Code);
        Assert.True((await recording.AmendAsync(ClinicalLead, first.Id, await again.AnsweredAsync(agency, ClinicalLead, amends: first.Id), Cancel)).Succeeded);
        Assert.Equal("record-amended", (await recording.AmendAsync(Juniper, first.Id, again with { Submission = "third" }, Cancel)).Refusal?.Code);
    }
}
