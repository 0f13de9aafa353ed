using System.Runtime.CompilerServices;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>
/// The civil days of one zone: where each starts, which one an instant falls on, and how it is written. Worked out once for every stretch of
/// 512 days that is asked for and kept with the zone: clocks ask for the same few weeks over and over.
/// </summary>
internal sealed class CivilDays
{
    private const int PageBits = 9;
    private const int PageLength = 1 << PageBits;
    private const int Pages = 1 << 9;

    private static readonly LocalDate Epoch = new(1900, 1, 1);
    private static readonly int DaysToUnixEpoch = Period.DaysBetween(Epoch, new LocalDate(1970, 1, 1));
    private static readonly ConditionalWeakTable<DateTimeZone, CivilDays> Kept = [];

    private readonly Page?[] _pages = new Page?[Pages];

    private CivilDays(DateTimeZone zone) => Zone = zone;

    public DateTimeZone Zone { get; }

    public static CivilDays Of(DateTimeZone zone) => Kept.GetValue(zone, static z => new CivilDays(z));

    /// <summary>First instant of the civil day so many days on.</summary>
    public Instant StartOf(LocalDate day, int plus = 0)
    {
        var number = Number(day) + plus;
        return IsKept(number) ? StartAt(number) : Zone.AtStartOfDay(day.PlusDays(plus)).ToInstant();
    }

    /// <summary>The civil day an instant falls on.</summary>
    public LocalDate DayOf(Instant at)
    {
        var guess = (int)Math.Floor((at - NodaConstants.UnixEpoch).TotalDays) + DaysToUnixEpoch;
        if (!IsKept(guess - 2) || !IsKept(guess + 2)) return at.InZone(Zone).Date;
        while (at < StartAt(guess)) guess--;
        while (at >= StartAt(guess + 1)) guess++;
        return PageOf(guess).Days[guess & (PageLength - 1)];
    }

    /// <summary>A day as reasons print it, for example <c>Wed 3 Mar</c>.</summary>
    public string Short(LocalDate day)
    {
        var number = Number(day);
        if (!IsKept(number)) return Says.Short(day);
        var written = PageOf(number).Written;
        return written[number & (PageLength - 1)] ??= Says.Short(day);
    }

    /// <summary>A moment as reasons print it: the day, and the wall clock when the time is known.</summary>
    public string Told(CareMoment moment) => moment.At is { } at ? Told(at, moment.Date) : Short(moment.Date);

    /// <summary>An instant as reasons print it.</summary>
    public string Told(Instant at) => Told(at, DayOf(at));

    private string Told(Instant at, LocalDate day) => $"{Short(day)} {Says.Clock(at, Zone)}";

    private static int Number(LocalDate day) => Period.DaysBetween(Epoch, day);

    private static bool IsKept(int number) => (uint)number < PageLength * Pages;

    private Instant StartAt(int number) => PageOf(number).Starts[number & (PageLength - 1)];

    private Page PageOf(int number) => _pages[number >> PageBits] ?? Read(number >> PageBits);

    /// <summary>Two threads may read the same stretch at once; both read the same.</summary>
    private Page Read(int index)
    {
        var page = new Page(new Instant[PageLength], new LocalDate[PageLength], new string?[PageLength]);
        var day = Epoch.PlusDays(index << PageBits);
        for (var i = 0; i < PageLength; i++, day = day.PlusDays(1))
        {
            page.Starts[i] = Zone.AtStartOfDay(day).ToInstant();
            page.Days[i] = day;
        }

        return _pages[index] = page;
    }

    private sealed record Page(Instant[] Starts, LocalDate[] Days, string?[] Written);
}
