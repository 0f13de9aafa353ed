namespace HomeLine.Planning.Problem;

/// <summary>The most visits with care of one kind that a nurse makes, for example two starts of care a day.</summary>
/// <param name="Kind">One of <see cref="CareTask.Kinds"/>.</param>
/// <param name="Most">Most visits, 0 or more.</param>
/// <param name="AWeek">Counted over each seven days from day 0; otherwise by day.</param>
public sealed record VisitCap(string Kind, int Most, bool AWeek = false)
{
    /// <summary>Which stretch of time a day falls into: the day itself, or its seven days.</summary>
    /// <param name="day">Day index; negative for days before the horizon.</param>
    public int Stretch(int day) => AWeek ? (int)Math.Floor(day / 7.0) : day;
}
