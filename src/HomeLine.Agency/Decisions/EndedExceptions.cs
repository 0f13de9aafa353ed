using System.Globalization;
using HomeLine.LineCare;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Decisions;

/// <summary>Exceptions to policy that have ended: policy applies again, and somebody licensed looks whether that is right. Pure.</summary>
public static class EndedExceptions
{
    public static IEnumerable<OpenDecision> Of(PatientCare care, LocalDate today) => care.Exceptions
        .Where(x => x.Through < today && !care.Exceptions.Any(other => other.RuleId == x.RuleId && other.Through > x.Through))
        .Select(x => OpenDecision.Of(
            care.Patient, null, AppDecisionCodes.ExceptionEnded,
            $"The exception to {x.RuleId} by {x.Owner} ({x.Reason}) ended on {x.Through.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture)}; policy applies again.",
            $"{x.RuleId} {LocalDatePattern.Iso.Format(x.Through)}", x.Through.PlusDays(1)));
}
