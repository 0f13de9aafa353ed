using System.Globalization;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>The entry that would be made if a window's care were done, for looking ahead. Such entries are never stored.</summary>
internal static class AssumedCare
{
    private const string Prefix = "assumed-";

    public static readonly LocalTime Midday = LocalTime.Noon;

    public static bool IsAssumed(EventId? id) => id?.Value?.StartsWith(Prefix, StringComparison.Ordinal) == true;

    /// <summary>Whether looking ahead goes on past this window: a container's set ends with the container, and a validation is renewed by teaching.</summary>
    public static bool Repeats(DueWindow window, PatientCare care) => window.Item switch
    {
        CareItem.CaregiverValidation => false,
        CareItem.Set => care.Infusions.Any(i => i.Line == window.Line && i.Lumen == window.Lumen && i.Kind == InfusionKind.Continuous),
        _ => true,
    };

    /// <summary>The target of a deadline or of an hour clock; noon of the last acceptable day of a date clock.</summary>
    public static Instant MomentFor(DueWindow window, DateTimeZone zone) => window.Basis == ClockBasis.Hour
        ? window.Target
        : window.LastDay.At(Midday).InZoneLeniently(zone).ToInstant();

    public static LineEvent For(DueWindow window, PatientCare care, Instant at, int number)
    {
        var kind = KindFor(window, care);
        return new LineEvent
        {
            Id = new EventId(Prefix + number.ToString(CultureInfo.InvariantCulture)),
            Patient = care.Patient,
            Line = window.Line ?? care.Orders.FirstOrDefault(order => order.Id == window.Order)?.Line,
            Kind = kind,
            Performed = CareMoment.Exactly(at, care.Zone),
            RecordedAt = at,
            Performer = window.Owner,
            Dressing = kind == LineEventKind.DressingChanged ? CoveringAfter(window, care, at) : kind == LineEventKind.PortAccessed ? DressingKind.Film : null,
            SecurementChanged = kind is LineEventKind.DressingChanged or LineEventKind.PortAccessed,
            ConnectorsChanged = kind == LineEventKind.ConnectorChanged && window.Lumen is { } connector ? [connector] : [],
            LumensUsed = kind is LineEventKind.Flushed or LineEventKind.SetChanged && window.Lumen is { } lumen ? [lumen] : [],
            Order = window.Order,
        };
    }

    private static LineEventKind KindFor(DueWindow window, PatientCare care) => window.Item switch
    {
        CareItem.Dressing or CareItem.Securement or CareItem.OutsideLength => LineEventKind.DressingChanged,
        CareItem.Connector => LineEventKind.ConnectorChanged,
        CareItem.Set => LineEventKind.SetChanged,
        CareItem.PortNeedle => LineEventKind.PortAccessed,
        CareItem.LumenFlush or CareItem.PortFlush => LineEventKind.Flushed,
        CareItem.SiteCheck or CareItem.NurseCheck or CareItem.RemovalSiteCheck => LineEventKind.SiteChecked,
        CareItem.Labs => LineEventKind.LabsDrawn,
        CareItem.Recertification => LineEventKind.Recertified,
        CareItem.OrderedService => ServiceFor(window, care),
        CareItem.CaregiverValidation => throw new ArgumentOutOfRangeException(nameof(window), window.Item, "A validation is not care."),
        _ => throw new ArgumentOutOfRangeException(nameof(window), window.Item, "No such care item."),
    };

    private static LineEventKind ServiceFor(DueWindow window, PatientCare care) =>
        care.Orders.FirstOrDefault(order => order.Id == window.Order)?.Kind switch
        {
            OrderKind.Removal => LineEventKind.Removed,
            OrderKind.NurseDose => LineEventKind.DoseGiven,
            _ => LineEventKind.ServiceGiven,
        };

    /// <summary>The first dressing and gauze beneath a film are followed by a film (common practice, no source); otherwise the same kind goes on again.</summary>
    private static DressingKind CoveringAfter(DueWindow window, PatientCare care, Instant at)
    {
        var last = OrderedLedger.Read(care.Events, care.Zone, at)
            .LastOrDefault(entry => entry.Line == window.Line
                && ResetTable.Of(entry.Kind, CareItem.Dressing) is ResetEffect.Resets or ResetEffect.Starts);
        return last is null || last.Kind == LineEventKind.Inserted ? DressingKind.Film
            : last.Dressing is null or DressingKind.GauzeUnderFilm or DressingKind.None ? DressingKind.Film
            : last.Dressing.Value;
    }
}
