using System.CommandLine;
using System.Diagnostics;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>How long a change by hand takes on the published plan of an invented week: one move judged, and all places of one visit.</summary>
internal static class WhatIfCommand
{
    public static Command Create()
    {
        Option<string> size = Asked.Size("--size", "60x700");
        Option<int> visits = Asked.Number("--visits", "How many visits are picked up.", 200, least: 1);
        Option<int> rounds = Asked.Number("--rounds", "Rounds for the plan.", 2_000);
        Option<int> seed = Asked.Number("--seed", "Seed.", 1);
        var command = new Command("what-if", "A visit moved by hand: milliseconds on the wall, 50th, 95th and 99th of a hundred.") { size, visits, rounds, seed };
        command.SetAction(parsed =>
        {
            WeekSize asked = Asked.SizesOf(parsed.GetValue(size)!)[0];
            WeekProblem week = PublishedWeek.Of(InventedWeek.Of(asked.Nurses, asked.Patients, parsed.GetValue(seed)), parsed.GetValue(rounds), now: InventedWeek.At(1, 7, 50));
            Console.WriteLine("what,nurses,patients,events,allowed,mean_ms,p50_ms,p95_ms,p99_ms,worst_ms");
            foreach (string row in Rows(week, parsed.GetValue(visits), new Draw(parsed.GetValue(seed)))) Console.WriteLine(row);
        });
        return command;
    }

    private static IEnumerable<string> Rows(WeekProblem week, int count, Draw draw)
    {
        string head = $"{week.Nurses.Length},{week.Patients.Length}";
        var ready = new List<double>();
        HandWeek hand = new(week, week.Published!.Visits);
        for (int i = 0; i < 5; i++) Timed(ready, () => hand = new HandWeek(week, week.Published!.Visits));
        yield return Percentiles.Row($"make-ready,{head},5,5", ready);
        PlannedVisit[] movable = [.. hand.Visits.Where(v => v.Start >= week.Now && !hand.Stays(v.Id))];
        var one = new List<double>();
        int allowed = 0;
        for (int i = -20; i < count; i++)
        {
            PlannedVisit visit = movable[draw.Below(movable.Length)];
            var place = new DayPlace(week.Nurses[draw.Below(week.Nurses.Length)].Id, 1 + draw.Below(5), draw.Below(6));
            Timed(i < 0 ? [] : one, () => allowed += hand.Try(new HandMove.Move(visit.Id, place)).IsAllowed ? 1 : 0);
        }

        yield return Percentiles.Row($"one-move,{head},{count},{allowed}", one);
        var all = new List<double>();
        int places = 0;
        for (int i = -5; i < count; i++)
        {
            PlannedVisit visit = movable[draw.Below(movable.Length)];
            Timed(i < 0 ? [] : all, () => places += hand.PlacesOf(visit.Id).Length);
        }

        yield return Percentiles.Row($"all-places,{head},{count},{places}", all);
    }

    /// <summary>On the wall: the places of a visit are judged on all cores.</summary>
    private static void Timed(List<double> times, Action act)
    {
        long began = Stopwatch.GetTimestamp();
        act();
        times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
    }
}
