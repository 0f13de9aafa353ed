using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// How long items take: getting ready, which a visit needs once, and the work itself. A visit's minutes in the home are
/// the largest getting-ready among its items plus all the work. Every number is policy.
/// </summary>
public sealed class CareMinutes(PolicyBook policy, LocalDate date)
{
    /// <summary>Minutes of getting ready and of the item itself.</summary>
    public (int Setup, int Work) Of(CareItem item, PatientCare care, Line? line, bool isFurtherLine)
    {
        string name = PolicyName(item, isFurtherLine);
        int setup = Value($"minutes.{name}.setup");
        int work = item == CareItem.Dressing && line?.DressingMinutes is { } own ? own : Value($"minutes.{name}.work");
        if (item is CareItem.Dressing or CareItem.PortNeedle)
        {
            if (care.Risks.HasFlag(RiskFactors.ParenteralNutrition)) setup += Value("minutes.setup.pn.extra");
            if (IsChild(care)) setup += Value("minutes.setup.child.extra");
        }

        return (setup, work);
    }

    /// <summary>Minutes of an ordered draw or service; the order's own figures go before policy.</summary>
    public (int Setup, int Work) Of(CareOrder order)
    {
        string name = order.Kind switch
        {
            OrderKind.Labs => "labs",
            OrderKind.DrugLevel => "level",
            OrderKind.NurseDose => "nursedose",
            OrderKind.LongInfusion => "longinfusion",
            OrderKind.Hydration => "hydration",
            OrderKind.Teaching => "teaching",
            OrderKind.Removal => "removal",
            OrderKind.VisitFrequency or OrderKind.Interval =>
                throw new ArgumentException($"An order of kind {order.Kind} is no work at the bedside.", nameof(order)),
            _ => throw new ArgumentOutOfRangeException(nameof(order), order.Kind, "Unknown kind of order"),
        };
        return (order.SetupMinutes ?? Value($"minutes.{name}.setup"), order.WorkMinutes ?? Value($"minutes.{name}.work"));
    }

    private bool IsChild(PatientCare care) =>
        care.BornOn is { } born && born.PlusYears(Value("minutes.setup.child.age")) > date;

    private int Value(string ruleId) => (int)policy.ValueOf(ruleId, date);

    private static string PolicyName(CareItem item, bool isFurtherLine) => item switch
    {
        CareItem.Dressing => isFurtherLine ? "dressing.further" : "dressing",
        CareItem.Securement => "securement",
        CareItem.Connector => "connector",
        CareItem.Set => "set",
        CareItem.PortNeedle => "needle",
        CareItem.LumenFlush => "lumenflush",
        CareItem.PortFlush => "portflush",
        CareItem.OutsideLength => "length",
        CareItem.SiteCheck => "sitecheck",
        CareItem.Recertification => "recertification",
        CareItem.CaregiverValidation => "validation",
        CareItem.NurseCheck => "nursecheck",
        CareItem.RemovalSiteCheck => "removalcheck",
        CareItem.Labs => "labs",
        CareItem.OrderedService => throw new ArgumentException("An ordered service takes the minutes of its order.", nameof(item)),
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "Unknown item"),
    };
}
