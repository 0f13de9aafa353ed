using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>An exception as typed: it needs an owner, a reason and an end; without an end it gets the longest policy allows.</summary>
/// <param name="Exception">The exception as it would stand, its end filled in.</param>
/// <param name="Replies">What is refused, asked or told about it, refusals first.</param>
public sealed record BeforeExcepting(CareException Exception, ImmutableArray<RecordingReply> Replies)
{
    /// <summary>The code of an exception without an owner or a reason.</summary>
    public const string Unowned = "exception-unowned";

    /// <summary>The code of an exception without an end: it gets the longest policy allows.</summary>
    public const string WithoutEnd = "exception-without-end";

    /// <summary>The code of an exception that lasts longer than policy allows.</summary>
    public const string TooLong = "exception-too-long";

    /// <summary>The code of an exception to a rule that does not exist, or with a value it cannot have.</summary>
    public const string OutOfRange = "exception-out-of-range";

    /// <summary>Checks an exception and fills in its end.</summary>
    /// <param name="patient">For whom.</param>
    /// <param name="ruleId">Which rule.</param>
    /// <param name="value">The value instead, in the rule's unit.</param>
    /// <param name="owner">The licensed person who answers for it.</param>
    /// <param name="through">Last day, included; empty for the longest that policy allows.</param>
    /// <param name="reason">Why.</param>
    /// <param name="policy">The policy book; the longest life is <c>exception.life.max</c>.</param>
    /// <param name="today">Today at the patient's place.</param>
    public static BeforeExcepting Of(
        Lines.PatientId patient, string ruleId, decimal value, string owner, LocalDate? through, string reason, PolicyBook policy, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(policy);
        var replies = new List<RecordingReply>();
        void Add(string code, ReplyWeight weight, string sentence) => replies.Add(new RecordingReply(code, weight, null, null, null, sentence));

        var longest = today.PlusDays((int)policy.ValueOf(RuleIds.ExceptionLife, today));
        if (string.IsNullOrWhiteSpace(owner) || string.IsNullOrWhiteSpace(reason))
            Add(Unowned, ReplyWeight.Refuse, "An exception needs the licensed person who answers for it, and the reason.");
        if (policy.InForce(ruleId, today) is not { } rule) Add(OutOfRange, ReplyWeight.Refuse, $"There is no rule {ruleId}.");
        else if (value < 0 || (rule.Unit is "days" or "hours" && (value == 0 || value > (rule.Unit == "days" ? 365 : 365 * 24))))
            Add(OutOfRange, ReplyWeight.Refuse, $"{Says.Amount(value, rule.Unit)} cannot be: above 0 and at most a year.");
        if (through is null) Add(WithoutEnd, ReplyWeight.Tell, $"No end was given: it ends {Says.Day(longest)}, the longest policy allows.");
        else if (through > longest) Add(TooLong, ReplyWeight.Refuse, $"It may run to {Says.Day(longest)} at most; renew it then.");
        else if (through < today) Add(OutOfRange, ReplyWeight.Refuse, "Its last day has passed.");
        return new BeforeExcepting(
            new CareException(patient, ruleId, value, owner, through ?? longest, reason), [.. replies.OrderBy(reply => reply.Weight)]);
    }
}
