using System.Collections.Immutable;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>The end of a window and what set it. What it overrode is kept as something that can be told, and told only when somebody reads it.</summary>
internal readonly record struct Limit
{
    private ImmutableStack<Func<string>>? Notes { get; init; }

    public Instant LateFrom { get; private init; }

    /// <summary>The policy that stood before an exception or an order took its place.</summary>
    public CompiledRule Rule { get; private init; }

    public CareException? Exception { get; private init; }

    public CareOrder? Order { get; private init; }

    private int OrderDays { get; init; }

    /// <summary>Whether neither exception nor order has a say.</summary>
    public bool ByPolicyAlone => Exception is null && Order is null;

    public ClockBasis Basis => Rule.Basis;

    public decimal Value => Order is not null ? OrderDays : Exception?.Value ?? Rule.Rule.Value;

    public string Unit => Order is not null ? "days" : Rule.Rule.Unit;

    public string ValueText => ByPolicyAlone ? Rule.Amount : Says.Amount(Value, Unit);

    public string RuleId => Order?.Id ?? Rule.Rule.Id;

    public PolicyLevel Level => Order is not null ? PolicyLevel.Order : Exception is not null ? PolicyLevel.PatientException : Rule.Level;

    public string Source => Order is { } order ? $"Order {order.Id}, {order.Practitioner}"
        : Exception is { } exception ? $"Exception by {exception.Owner}: {exception.Reason}"
        : Rule.Rule.Source;

    public string SetBy => Order is { } order ? $"order {order.Id}"
        : Exception is { } exception ? $"exception for this patient by {exception.Owner}, to {Says.Day(exception.Through)}"
        : Rule.SetBy;

    /// <summary>Rules that would have applied and did not, in the order they were weighed.</summary>
    public ImmutableArray<string> Overrode => Notes is null ? [] : [.. Notes.Reverse().Select(note => note())];

    public static Limit By(CompiledRule rule, Instant end) => new() { Rule = rule, LateFrom = end };

    /// <summary>Cut short by a later version of the policy.</summary>
    public Limit CutBy(CompiledRule version, Instant end)
    {
        var before = ValueText;
        return this with { Rule = version, LateFrom = end, Notes = Noting(() => $"{before} before {Says.Day(version.EffectiveFrom)}") };
    }

    /// <summary>A later version that does not count yet.</summary>
    public Limit Beside(CompiledRule version) => this with { Notes = Noting(() => $"{version.Amount} counts from the next change on") };

    public Limit By(CareException exception, Instant end) => this with { Exception = exception, LateFrom = end, Notes = NotingThis() };

    public Limit By(CareOrder order, int days, Instant end) => this with { Order = order, OrderDays = days, LateFrom = end, Notes = NotingThis() };

    /// <summary>An order that has no say.</summary>
    public Limit Beside(CareOrder order, int days, string why) => this with { Notes = Noting(() => $"order {order.Id}: every {days} days{why}") };

    private ImmutableStack<Func<string>> NotingThis()
    {
        var before = this;
        return Noting(() => $"{before.ValueText}, {before.SetBy}");
    }

    private ImmutableStack<Func<string>> Noting(Func<string> note) => (Notes ?? []).Push(note);
}
