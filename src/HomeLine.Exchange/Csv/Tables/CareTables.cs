using System.Collections.Frozen;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Travel;
using NodaTime;

using OutsideCare = HomeLine.Agency.Roster.OutsideCare;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>caregivers.csv: who is validated for what, until when.</summary>
internal static class CaregiversTable
{
    public static readonly TableShape Shape = TableShape.Of("caregivers.csv", false, "patient! person! item! valid_through! line");

    public static CaregiverValidation Read(Row row)
    {
        PatientId patient = row.Patient();
        var validation = new CaregiverValidation(
            patient, row.RequiredText("person"), row.Word<CareItem>("item"), row.RequiredDate("valid_through"), row.LineOf(patient));
        row.OnlyOnce("patient", "line", "person", "item");
        return validation;
    }

    public static IEnumerable<string[]> Write(IEnumerable<CaregiverValidation> caregivers) => caregivers.Select(one => new[]
    {
        one.Patient.Value, one.Person, Words<CareItem>.Of(one.Item), TimeText.Write(one.ValidThrough), one.Line?.Value ?? "",
    });
}

/// <summary>holds.csv: stretches without planned visits.</summary>
internal static class HoldsTable
{
    public static readonly TableShape Shape = TableShape.Of("holds.csv", false, "patient! from! through reason! state zone address phone care_by");

    public static Hold Read(Row row)
    {
        var hold = new Hold(row.Patient(), row.RequiredDate("from"), row.Date("through"), row.RequiredText("reason"), Elsewhere(row));
        if (row.IsSound) row.InOrder<LocalDate>("from", hold.From, "through", hold.Through);
        if (hold is { Elsewhere: not null, Through: null }) row.Refuse("through", "A stay at a place that is named has a last day.");
        row.OnlyOnce("patient", "from");
        return hold;
    }

    public static IEnumerable<string[]> Write(IEnumerable<Hold> holds) => holds.Select(hold => new[]
    {
        hold.Patient.Value, TimeText.Write(hold.From), TimeText.Write(hold.Through), hold.Reason,
        hold.Elsewhere?.State ?? "", hold.Elsewhere?.ZoneId ?? "", hold.Elsewhere?.Address ?? "", hold.Elsewhere?.Phone ?? "", hold.Elsewhere?.CareBy ?? "",
    });

    /// <summary>The place is known once its state is; its zone is the branch's when empty.</summary>
    private static Elsewhere? Elsewhere(Row row)
    {
        string state = row.Text("state").Trim(), zone = row.Trimmed("zone");
        if (state.Length == 0)
        {
            foreach (string column in (string[])["zone", "address", "phone", "care_by"])
                if (row.Has(column)) row.Refuse(column, "The state of the place is needed too.");
            return null;
        }

        if (zone.Length > 0 && DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
        {
            row.Refuse("zone", AgencyFacts.ZoneProblem);
            return null;
        }

        return new Elsewhere(state, zone.Length > 0 ? zone : row.Ties.BranchZone.Id, row.Text("address"), row.Text("phone"), row.Text("care_by"));
    }
}

/// <summary>outside-care.csv: care expected from a clinic or another agency.</summary>
internal static class OutsideCareTable
{
    public static readonly TableShape Shape = TableShape.Of("outside-care.csv", false, "patient! line where! expected_on! fall_back_from!");

    public static OutsideCare Read(Row row)
    {
        PatientId patient = row.Patient();
        var care = new OutsideCare(patient, row.LineOf(patient), row.RequiredText("where"), row.RequiredDate("expected_on"),
            row.RequiredDateTime("fall_back_from"));
        if (row.IsSound && care.FallBackFrom.Date < care.ExpectedOn)
            row.Refuse("fall_back_from", "The fallback begins before the care is even expected.");
        row.OnlyOnce("patient", "line", "expected_on");
        return care;
    }

    public static IEnumerable<string[]> Write(IEnumerable<OutsideCare> care) => care.Select(one => new[]
    {
        one.Patient.Value, one.Line?.Value ?? "", one.Where, TimeText.Write(one.ExpectedOn), TimeText.Write(one.FallBackFrom),
    });
}

/// <summary>exceptions.csv: exceptions to policy for one patient, with owner and end.</summary>
internal static class ExceptionsTable
{
    public static readonly TableShape Shape = TableShape.Of("exceptions.csv", false, "patient! rule! value! owner! through! reason!");

    public static CareException Read(Row row)
    {
        var exception = new CareException(
            row.Patient(), PolicyTable.KnownRule(row), row.RequiredNumber("value", 0, PolicyTable.LargestValue), row.RequiredText("owner"),
            row.RequiredDate("through"), row.RequiredText("reason"));
        row.OnlyOnce("patient", "rule");
        return exception;
    }

    public static IEnumerable<string[]> Write(IEnumerable<CareException> exceptions) => exceptions.Select(one => new[]
    {
        one.Patient.Value, one.RuleId, NumberText.Write(one.Value), one.Owner, TimeText.Write(one.Through), one.Reason,
    });
}

/// <summary>policy.csv: the agency's own rules; the shipped defaults stand beneath them.</summary>
internal static class PolicyTable
{
    public const decimal LargestValue = 100_000;
    public const int MostRules = 2_000;
    public static readonly TableShape Shape =
        TableShape.Of("policy.csv", false, "rule! value! unit! effective_from! standing! source! note");

    private const decimal LongestIntervalDays = 365;
    private static readonly FrozenDictionary<string, PolicyRule> Shipped =
        PolicyBook.Default.Rules.DistinctBy(rule => rule.Id).ToFrozenDictionary(rule => rule.Id, StringComparer.Ordinal);

    public static PolicyRule Read(Row row, ISet<(string Rule, LocalDate From)> seen)
    {
        var rule = new PolicyRule(
            KnownRule(row), row.RequiredNumber("value", 0, LargestValue), row.Required("unit"), row.RequiredDate("effective_from"),
            PolicyLevel.Agency, row.Word<RuleStanding>("standing"), row.RequiredText("source"), row.Text("note"));
        if (row.IsSound && Shipped[rule.Id].Unit is var unit && rule.Unit != unit && !(IsInterval(unit) && IsInterval(rule.Unit)))
            row.Refuse("unit", $"This rule is counted in {unit}.");
        if (row.IsSound && rule.Unit == "days" && rule.Value > LongestIntervalDays)
            row.Refuse("value", "An interval is at most 365 days.");
        if (row.IsSound && rule.Value == 0 && IsInterval(rule.Unit) && Shipped[rule.Id].Value != 0)
            row.Refuse("value", "An interval of nothing would make the item always due.");
        if (row.IsSound && !seen.Add((rule.Id, rule.EffectiveFrom))) row.Refuse("rule", "This rule has two values from the same day.");
        return rule;
    }

    /// <summary>Only rules that the clocks or the planner read; a mistyped one would silently do nothing.</summary>
    public static string KnownRule(Row row)
    {
        string id = row.Id("rule");
        if (id.Length > 0 && !Shipped.ContainsKey(id)) row.Refuse("rule", "There is no such rule; docs/import.md says where they are listed.");
        return id;
    }

    private static bool IsInterval(string unit) => unit is "days" or "hours";

    public static IEnumerable<string[]> Write(IEnumerable<PolicyRule> rules) => rules.Select(rule => new[]
    {
        rule.Id, NumberText.Write(rule.Value), rule.Unit, TimeText.Write(rule.EffectiveFrom), Words<RuleStanding>.Of(rule.Standing), rule.Source,
        rule.Note,
    });
}
