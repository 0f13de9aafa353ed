using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime.Text;

namespace HomeLine.Agency.Roster;

/// <summary>What tells one row from another of its kind. A row with the same key is the same row, changed.</summary>
internal static class RosterKeys
{
    public static string Of(AgencyProfile _) => "profile";

    public static string Of(AgencyMap _) => "map";

    public static string Of(NurseFile nurse) => nurse.Id;

    public static string Of(Patient patient) => patient.Id.Value;

    public static string Of(Line line) => line.Id.Value;

    public static string Of(Infusion infusion) => $"{infusion.Line} {infusion.Lumen} {infusion.Drug}";

    public static string Of(LineEvent entry) => entry.Id.Value;

    public static string Of(CareOrder order) => order.Id;

    public static string Of(CaregiverValidation validation) =>
        $"{validation.Patient} {validation.Line?.Value ?? "every line"} {validation.Person} {validation.Item}";

    public static string Of(Hold hold) => $"{hold.Patient} {LocalDatePattern.Iso.Format(hold.From)}";

    /// <summary>A patient has one exception to a rule; a new one takes the place of the old.</summary>
    public static string Of(CareException exception) => $"{exception.Patient} {exception.RuleId}";

    public static string Of(OutsideCare care) =>
        $"{care.Patient} {care.Line?.Value ?? "every line"} {LocalDatePattern.Iso.Format(care.ExpectedOn)}";

    public static string Of(PolicyRule rule) => $"{rule.Id} {LocalDatePattern.Iso.Format(rule.EffectiveFrom)} {rule.Level}";
}
