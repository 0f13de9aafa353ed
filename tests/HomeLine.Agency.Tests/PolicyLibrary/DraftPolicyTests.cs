using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.PolicyLibrary;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.PolicyLibrary;

/// <summary>Policy versions through the real database, both kinds, on the invented agency's Monday 8 March.</summary>
public sealed class DraftPolicyTests(PostgresCluster cluster)
{
    private static readonly LocalDate Today = new(2027, 3, 8);
    private static readonly Actor Second = new("u-second", "Second Lead", [AgencyRole.ClinicalManager]);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static PolicyEntry Entry(LocalDate from, params ImmutableArray<RuleChange> changes) => new(from, "agreed in the case conference", changes);

    private static RuleChange Film(decimal days) => new("dressing.film.max", days, "days", "Agency paper 7");

    private static Task<TestAgency> MondayAsync(Provider provider, PostgresCluster cluster) => OpenAsync(provider, cluster, DemoAgency.At(8, 6, 0));

    private static async Task<PolicyDraft> DraftAsync(TestAgency agency, PolicyEntry entry) =>
        (await agency.Ask<DraftPolicy>().DraftAsync(ClinicalLead, entry, Cancel)).Value;

    private static async Task<DraftPreview> PreviewAsync(TestAgency agency, int number) =>
        (await agency.Ask<AskPolicyShelf>().PreviewAsync(ClinicalLead, number, Cancel)).Value;

    private static Task<Outcome<PolicyVersion>> ApproveAsync(TestAgency agency, DraftPreview preview, Actor? actor = null) =>
        agency.Ask<DraftPolicy>().ApproveAsync(actor ?? ClinicalLead, preview.Version.Number, preview.Mark, Cancel);

    private static async Task<Dictionary<(PatientId, CareItem, LineId?, string?, string?, WindowStanding), DueWindow>> DueAsync(TestAgency agency)
    {
        await using AgencyDb db = agency.Open();
        AgencyAtHand hand = (await AgencyAtHand.ReadAsync(db, agency.Ask<AgencyClock>(), Cancel)).Value;
        return hand.Roster.Patients.SelectMany(p => hand.Files.WhatIsDue(p.Id, hand.Now).Windows)
            .Where(w => w.Standing != WindowStanding.Ordered && w.Item != CareItem.CaregiverValidation)
            .ToDictionary(w => (w.Patient, w.Item, w.Line, w.Lumen, w.Order, w.Standing));
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task What_the_preview_shows_is_what_the_approval_does(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider, cluster);
        var before = await DueAsync(agency);
        PolicyDraft draft = await DraftAsync(agency, Entry(
            Today, Film(5), new RuleChange("dressing.film.min", 3, "days", "Agency paper 7"), new RuleChange("connector.intermittent.max", 5, "days", "Agency paper 7")));
        DraftPreview preview = await PreviewAsync(agency, draft.Number);
        Assert.Equal(before.Values.Select(w => w.LateFrom), (await DueAsync(agency)).Values.Select(w => w.LateFrom));

        Assert.True((await ApproveAsync(agency, preview)).Succeeded);

        var after = await DueAsync(agency);
        var really = after.Where(w => w.Value.LateFrom != before[w.Key].LateFrom || w.Value.Opens != before[w.Key].Opens || w.Value.Target != before[w.Key].Target)
            .ToDictionary(w => w.Key, w => w.Value);
        Assert.NotEmpty(preview.Moved);
        Assert.Equal(
            really.Values.Select(Text).Order(StringComparer.Ordinal),
            preview.Moved.Select(m => Text(m.After!)).Order(StringComparer.Ordinal));
    }

    /// <summary>
    /// Film changed Saturday 6 March (P22), policy 7 days made 5: due Thursday 11 instead of Saturday 13; the arithmetic of the shorter interval.
    /// </summary>
    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_shorter_interval_bites_on_its_day_and_a_longer_one_counts_from_the_next_change(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider, cluster);
        Assert.Equal(new LocalDate(2027, 3, 13), await LastDayAsync(agency, "P22"));

        Assert.True((await ApproveAsync(agency, await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today.PlusDays(2), Film(5)))).Number))).Succeeded);
        Assert.Equal(new LocalDate(2027, 3, 11), await LastDayAsync(agency, "P22"));

        PolicyDraft longer = await DraftAsync(agency, Entry(Today.PlusDays(3), Film(6)));
        DraftPreview preview = await PreviewAsync(agency, longer.Number);
        Assert.DoesNotContain(preview.Moved, m => m.Patient.Value == "P22" && m.After!.Item == CareItem.Dressing);
        Assert.True((await ApproveAsync(agency, preview)).Succeeded);
        Assert.Equal(new LocalDate(2027, 3, 11), await LastDayAsync(agency, "P22"));
    }

    [Fact]
    public async Task The_preview_of_a_later_day_is_what_shows_on_that_day()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        PolicyDraft draft = await DraftAsync(agency, Entry(Today.PlusDays(2), Film(5), new RuleChange("dressing.film.min", 3, "days", "Agency paper 7")));
        DraftPreview preview = await PreviewAsync(agency, draft.Number);
        Assert.True((await ApproveAsync(agency, preview)).Succeeded);

        await agency.MoveClockAsync(10, 0, 0);

        var due = await DueAsync(agency);
        Assert.All(preview.Moved.Where(m => m.Patient.Value is not ("P53" or "P54" or "P55" or "P56" or "P57")), m =>
        {
            DueWindow now = due[(m.Patient, m.After!.Item, m.After.Line, m.After.Lumen, m.After.Order, m.After.Standing)];
            Assert.Equal((m.After.Opens, m.After.LateFrom), (now.Opens, now.LateFrom));
        });
    }

    [Fact]
    public async Task The_due_list_names_the_version_that_set_the_date()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        Assert.True((await ApproveAsync(agency, await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today, Film(5)))).Number))).Succeeded);

        DueRow row = (await agency.Ask<AskDueList>().AskAsync(Nurse, Cancel)).Value.First(r => r.Patient.Value == "P22" && r.Window.Item == CareItem.Dressing);

        Assert.Equal(PolicyLevel.Agency, row.Window.Because.Level);
        Assert.Contains("version 1, approved by Hyssop: Agency paper 7", row.Window.Because.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dressing.film.max", 0, "days", "policy-not-allowed")]
    [InlineData("dressing.film.max", -1, "days", "policy-not-allowed")]
    [InlineData("dressing.film.max", 366, "days", "policy-not-allowed")]
    [InlineData("dressing.film.max", 6.5, "days", "policy-not-allowed")]
    [InlineData("dressing.film.max", 4, "days", "policy-not-allowed")] // below its own earliest day, 5
    [InlineData("dressing.film.min", 8, "days", "policy-not-allowed")] // above its own last day, 7
    [InlineData("dressing.film.max", 7, "days", "policy-unchanged")]
    [InlineData("dressing.film.max", 6, "cm", "policy-unit")]
    [InlineData("dressing.cloth.max", 6, "days", "policy-rule-unknown")]
    [InlineData("calendar.dayofchange.isdayone", 2, "switch", "policy-not-allowed")]
    public async Task A_value_outside_its_limits_is_refused(string rule, double value, string unit, string code)
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);

        Outcome<PolicyDraft> refused = await agency.Ask<DraftPolicy>().DraftAsync(
            ClinicalLead, Entry(Today, new RuleChange(rule, (decimal)value, unit, "Agency paper 7")), Cancel);

        Assert.Equal(code, refused.Refusal?.Code);
    }

    [Fact]
    public async Task The_past_a_missing_word_and_other_roles_are_refused()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        var drafting = agency.Ask<DraftPolicy>();

        Assert.Equal("policy-in-past", (await drafting.DraftAsync(ClinicalLead, Entry(Today.PlusDays(-1), Film(5)), Cancel)).Refusal?.Code);
        Assert.Equal("policy-note-missing", (await drafting.DraftAsync(ClinicalLead, Entry(Today, Film(5)) with { Note = " " }, Cancel)).Refusal?.Code);
        Assert.Equal("policy-source-missing", (await drafting.DraftAsync(ClinicalLead, Entry(Today, Film(5) with { Source = "" }), Cancel)).Refusal?.Code);
        Assert.Equal("policy-empty", (await drafting.DraftAsync(ClinicalLead, Entry(Today), Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await drafting.DraftAsync(TestAgency.Coordinator, Entry(Today, Film(5)), Cancel)).Refusal?.Code);
        Assert.Equal("not-allowed", (await drafting.ApproveAsync(Nurse, 1, "", Cancel)).Refusal?.Code);
        Assert.Equal("policy-draft-unknown", (await drafting.ApproveAsync(ClinicalLead, 9, "", Cancel)).Refusal?.Code);
    }

    [Fact]
    public async Task A_draft_that_waited_past_its_day_cannot_be_approved()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        DraftPreview preview = await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today, Film(5)))).Number);

        await agency.MoveClockAsync(9, 6);

        Assert.Equal("policy-in-past", (await ApproveAsync(agency, preview)).Refusal?.Code);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task Where_there_is_a_second_clinical_lead_that_one_approves(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider, cluster);
        await using (AgencyDb db = agency.Open())
        {
            db.Users.Add(new Account { Id = Second.UserId, UserName = "second@agency.example", DisplayName = Second.Name });
            if (!await db.Roles.AnyAsync(r => r.Id == nameof(AgencyRole.ClinicalManager), Cancel))
                db.Roles.Add(new() { Id = nameof(AgencyRole.ClinicalManager), Name = nameof(AgencyRole.ClinicalManager) });
            db.UserRoles.Add(new() { UserId = Second.UserId, RoleId = nameof(AgencyRole.ClinicalManager) });
            await db.SaveChangesAsync(Cancel);
        }

        DraftPreview preview = await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today, Film(5)))).Number);

        Assert.Equal("policy-second-person", (await ApproveAsync(agency, preview)).Refusal?.Code);
        Assert.Equal(Second.Name, (await ApproveAsync(agency, preview, Second)).Value.Verdict?.By);
    }

    [Fact]
    public async Task An_approval_of_dates_that_were_not_shown_is_refused()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        DraftPreview first = await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today, Film(5)))).Number);
        Assert.True((await ApproveAsync(agency, await PreviewAsync(agency, (await DraftAsync(agency, Entry(
            Today.PlusDays(1), new RuleChange("dressing.film.max", 6, "days", "Agency paper 8")))).Number))).Succeeded);

        Assert.Equal("stale-preview", (await ApproveAsync(agency, first)).Refusal?.Code);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task A_draft_ends_once_and_what_was_written_stays_written(Provider provider)
    {
        await using TestAgency agency = await MondayAsync(provider, cluster);
        DraftPreview preview = await PreviewAsync(agency, (await DraftAsync(agency, Entry(Today, Film(5)))).Number);

        Outcome<PolicyVersion>[] outcomes = await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => Task.Run(() => ApproveAsync(agency, preview))));

        Assert.Single(outcomes, o => o.Succeeded);
        Assert.All(outcomes.Where(o => !o.Succeeded), o => Assert.Equal("policy-draft-closed", o.Refusal!.Code));
        Assert.Equal("policy-draft-closed", (await agency.Ask<DraftPolicy>().WithdrawAsync(ClinicalLead, 1, "no", Cancel)).Refusal?.Code);
        await using AgencyDb db = agency.Open();
        await Assert.ThrowsAnyAsync<Exception>(() => db.PolicyDrafts.ExecuteDeleteAsync(Cancel));
        await Assert.ThrowsAnyAsync<Exception>(() => db.PolicyRules.ExecuteUpdateAsync(r => r.SetProperty(x => x.Value, 9m), Cancel));
        Assert.True((await AuditTrail.VerifyAsync(db, Cancel)).IsWhole);
    }

    [Fact]
    public async Task Any_two_versions_are_compared_rule_by_rule()
    {
        await using TestAgency agency = await MondayAsync(Provider.Sqlite, cluster);
        foreach (PolicyEntry entry in (PolicyEntry[])[Entry(Today, Film(5)), Entry(Today.PlusDays(1), Film(6), new RuleChange("dressing.gauze.max", 48, "hours", "Agency paper 8"))])
            Assert.True((await ApproveAsync(agency, await PreviewAsync(agency, (await DraftAsync(agency, entry)).Number))).Succeeded);
        PolicyShelf shelf = (await agency.Ask<AskPolicyShelf>().AskAsync(Nurse, Cancel)).Value;

        Assert.Equal([("dressing.film.max", "7 days", "5 days")], shelf.Difference(0, 1).Select(d => (d.RuleId, d.Before, d.After)));
        Assert.Equal(
            [("dressing.film.max", "5 days", "6 days"), ("dressing.gauze.max", "2 days", "48 hours")],
            shelf.Difference(1, 2).Select(d => (d.RuleId, d.Before, d.After)));
        Assert.Equal(shelf.Difference(2, 0).Select(d => d.RuleId), shelf.Difference(0, 2).Select(d => d.RuleId));
        Assert.Contains("version 1, approved by Hyssop", shelf.Rules.Single(r => r.Rule.Id == "dressing.film.max").SetBy, StringComparison.Ordinal);
        Assert.Equal(6m, shelf.Rules.Single(r => r.Rule.Id == "dressing.film.max").Next?.Value);
    }

    private static string Text(DueWindow w) => $"{w.Patient} {w.Line} {w.Item} {w.Lumen} {w.Opens} {w.LateFrom}";

    private static async Task<LocalDate> LastDayAsync(TestAgency agency, string patient) =>
        (await agency.Ask<AskPatient>().AskAsync(Nurse, new PatientId(patient), Cancel)).Value.Due.First(r => r.Window.Item == CareItem.Dressing).Window.LastDay;
}
