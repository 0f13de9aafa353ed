namespace HomeLine.Planning.Problem;

/// <summary>Lengths and limits that hold for everybody. Values come from the agency's policy; the defaults are our own.</summary>
/// <param name="DocumentationMinutes">Charting after each visit, before driving on.</param>
/// <param name="RestBetweenShiftsMinutes">Least rest between two working days of one nurse.</param>
/// <param name="ToldRangeMinutes">Length of the arrival range a family is told; a start that moves inside it disturbs nobody.</param>
/// <param name="LateStepPoints">Risk points per weight for the first late day; each further day adds twice that plus one step more.</param>
public sealed record PlanningRules(
    int DocumentationMinutes,
    int RestBetweenShiftsMinutes,
    int ToldRangeMinutes,
    int LateStepPoints)
{
    /// <summary>A told or published visit that starts within this many minutes of now keeps nurse and time. Our own default: 60.</summary>
    public int FrozenAheadMinutes { get; init; } = 60;

    /// <summary>
    /// A family told a range is called too when the start moves by more than so many minutes inside it. Our own default: 30.
    /// </summary>
    public int CourtesyCallMinutes { get; init; } = 30;

    /// <summary>Length of one step of lateness of critical care, minutes. Our own default: 240.</summary>
    public int CriticalStepMinutes { get; init; } = 240;

    /// <summary>Points per weight for every started step of lateness of critical care. Our own default: 50.</summary>
    public int CriticalStepPoints { get; init; } = 50;

    /// <summary>
    /// What a nurse visit costs in the work tier besides its minutes on the road: bundling wins when it saves a knock on the door.
    /// Our own default: 30 minutes.
    /// </summary>
    public int VisitPriceMinutes { get; init; } = 30;

    /// <summary>What a minute of overtime costs in the work tier, minutes. Our own default: 2.</summary>
    public int OvertimeFactor { get; init; } = 2;

    /// <summary>Duty points for each visit beyond what the orders allow in a week. Our own default: 10.</summary>
    public int AllowanceExceededPoints { get; init; } = 10;

    /// <summary>
    /// Minutes at a drop point to hand specimens in. When set, the nurse who draws drives there herself, and the drive and these minutes are part of her day; when empty,
    /// somebody else takes them there, and a draw only has to be early enough.
    /// </summary>
    public int? HandInMinutes { get; init; }

    /// <summary>The soft points of the people tier.</summary>
    public SoftPoints Soft { get; init; } = new();

    /// <summary>The points of the disruption table.</summary>
    public DisruptionPoints Disruption { get; init; } = new();
}

/// <summary>Points of the people tier: who comes, how many faces, wishes, and how evenly the work is spread. Defaults are our own.</summary>
/// <param name="BackupNurse">A visit by a nurse the patient knows who is not the usual one.</param>
/// <param name="UnknownNurse">A visit by a nurse the patient does not know, where some nurses are known.</param>
/// <param name="ExtraFace">Each nurse beyond the first whom a patient sees in the horizon.</param>
/// <param name="MissingWish">Each preferred trait the visiting nurse lacks.</param>
/// <param name="LoadDivisor">The load of a nurse-day is its busy minutes squared, divided by this and rounded down.</param>
public sealed record SoftPoints(
    int BackupNurse = 1,
    int UnknownNurse = 3,
    int ExtraFace = 2,
    int MissingWish = 2,
    int LoadDivisor = 14_400)
{
    /// <summary>Each weekend day a nurse had lately more than the one who had fewest, when she is sent out on the next. Our own default: 2.</summary>
    public int WeekendTurn { get; init; } = 2;
}

/// <summary>Points of a change to the published plan, by what was promised. Drafts cost nothing unless said. Defaults are our own.</summary>
/// <param name="MovedPublished">Same day, outside the range, published only.</param>
/// <param name="MovedTold">Same day, outside the range the family was told.</param>
/// <param name="OtherNursePublished">Another nurse, published only.</param>
/// <param name="OtherNurseTold">Another nurse than the family was told.</param>
/// <param name="OtherDayDraft">Another day, only proposed.</param>
/// <param name="OtherDayPublished">Another day, published only.</param>
/// <param name="OtherDayTold">Another day than the family was told.</param>
/// <param name="MergedPublished">Cancelled because its care moved into another visit, published only.</param>
/// <param name="MergedTold">Cancelled because its care moved into another visit, told.</param>
/// <param name="NewVisit">A new visit.</param>
/// <param name="PhoneCall">Each family to call besides the one that is on the phone.</param>
/// <param name="OnCall">Each day of a nurse on call who is sent out although she had no visit.</param>
/// <param name="ExtraNurse">Each nurse beyond the first whose days change.</param>
public sealed record DisruptionPoints(
    int MovedPublished = 2,
    int MovedTold = 5,
    int OtherNursePublished = 2,
    int OtherNurseTold = 4,
    int OtherDayDraft = 1,
    int OtherDayPublished = 4,
    int OtherDayTold = 8,
    int MergedPublished = 1,
    int MergedTold = 2,
    int NewVisit = 1,
    int PhoneCall = 1,
    int ExtraNurse = 3,
    int OnCall = 6);
