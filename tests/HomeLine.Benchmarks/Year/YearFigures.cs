namespace HomeLine.Benchmarks.Year;

/// <summary>What a way of planning did in a year. Minutes, hours and kilometres as driven, not as planned.</summary>
internal sealed class YearFigures(string name)
{
    private readonly Dictionary<string, Dictionary<string, int>> _faces = new(StringComparer.Ordinal);

    public string Name { get; } = name;
    public int Visits { get; private set; }
    public int InVain { get; set; }
    public double LateHours { get; private set; }
    public double LateBrokenHours { get; private set; }
    public int MissedOrders { get; set; }

    /// <summary>Slots of the reserve missing in the weeks as planned on Mondays.</summary>
    public int SlotsMissing { get; set; }
    public double Kilometres { get; private set; }
    public double DrivingHours { get; private set; }
    public double OvertimeHours { get; private set; }
    public double PlannedOvertimeHours { get; private set; }

    /// <summary>Days of nurses on the road.</summary>
    public int Days { get; private set; }
    public double PaidHours { get; private set; }
    public int Calls { get; set; }
    /// <summary>Everything that stood late at the end of a day, a line each: day, patient, item, standing, since when, and the visits planned for it in that week.</summary>
    public List<string> LateList { get; } = [];

    public List<double> LateByWeek { get; } = [];

    /// <summary>Share of a patient's visits that the nurse made who came most often, averaged over visits of patients with three or more.</summary>
    public double Continuity
    {
        get
        {
            var often = _faces.Values.Where(f => f.Values.Sum() >= 3).ToList();
            return often.Count == 0 ? 1 : (double)often.Sum(f => f.Values.Max()) / often.Sum(f => f.Values.Sum());
        }
    }

    public void Made(string patient, string nurse)
    {
        Visits++;
        if (!_faces.TryGetValue(patient, out Dictionary<string, int>? faces)) _faces.Add(patient, faces = new(StringComparer.Ordinal));
        faces[nurse] = faces.GetValueOrDefault(nurse) + 1;
    }

    public void Drove(double km, int minutes) => (Kilometres, DrivingHours) = (Kilometres + km, DrivingHours + (minutes / 60.0));

    public void Worked(int paidMinutes, int overtimeMinutes, int plannedOvertime) => (PaidHours, OvertimeHours, PlannedOvertimeHours, Days) =
        (PaidHours + (paidMinutes / 60.0), OvertimeHours + (overtimeMinutes / 60.0), PlannedOvertimeHours + (plannedOvertime / 60.0), Days + 1);

    /// <summary>Hours that a care item stood late on a day.</summary>
    public void Late(double hours, bool isBroken)
    {
        LateHours += hours;
        if (isBroken) LateBrokenHours += hours;
    }
}
