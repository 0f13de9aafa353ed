namespace HomeLine.LineCare.Recording;

/// <summary>The codes of what is refused, asked or told before something is recorded. Stable: stored and listed by others.
/// Where the clocks later ask the same thing the code is that of <see cref="DecisionCodes"/>.</summary>
public static class RecordingCodes
{
    /// <summary>Care dated after now.</summary>
    public const string InTheFuture = "performed-in-future";

    /// <summary>Care dated before the line was placed.</summary>
    public const string BeforeInsertion = "before-insertion";

    /// <summary>Care without a date.</summary>
    public const string DateMissing = "date-missing";

    /// <summary>Care with a guessed date.</summary>
    public const string DateGuessed = "date-guessed";

    /// <summary>Care on an hour clock without a time.</summary>
    public const string TimeMissing = "time-missing";

    /// <summary>The patient has no such line.</summary>
    public const string LineUnknown = "line-unknown";

    /// <summary>The line was taken out.</summary>
    public const string LineRemoved = "line-removed";

    /// <summary>The line has no such lumen.</summary>
    public const string LumenUnknown = "lumen-unknown";

    /// <summary>The line has several lumens and none is named.</summary>
    public const string LumenMissing = "lumen-missing";

    /// <summary>The lumen is marked occluded.</summary>
    public const string LumenOccluded = "lumen-occluded";

    /// <summary>The line is locked for use.</summary>
    public const string LineLocked = "line-locked";

    /// <summary>A release without a licensed name and a reason.</summary>
    public const string ReleaseUnsigned = "release-unsigned";

    /// <summary>No dressing on a line that is not documented as healed, and no order for it.</summary>
    public const string BareSite = "bare-site-without-order";

    /// <summary>The material of the dressing is not said.</summary>
    public const string MaterialUnknown = "material-unknown";

    /// <summary>A port needle without the dressing that goes with it.</summary>
    public const string NeedleWithoutDressing = "needle-without-dressing";

    /// <summary>A change before its window opens, the seal intact.</summary>
    public const string BeforeItOpens = "before-it-opens";

    /// <summary>A connector sooner than the floor allows, without a trigger.</summary>
    public const string ConnectorTooSoon = "connector-too-soon";

    /// <summary>Connectors of one lumen changed again and again without a trigger.</summary>
    public const string ConnectorTooOften = "connector-too-often";

    /// <summary>A length outside what a line can measure.</summary>
    public const string LengthOutOfRange = "length-out-of-range";

    /// <summary>A length given in inches.</summary>
    public const string LengthInInches = "length-in-inches";

    /// <summary>A girth outside what an arm can measure.</summary>
    public const string GirthOutOfRange = "girth-out-of-range";

    /// <summary>The line came out and nobody measured it.</summary>
    public const string RemovedUnmeasured = "removed-unmeasured";

    /// <summary>Removal, culture or declotting without an order.</summary>
    public const string WithoutOrder = "without-order";

    /// <summary>A second report of the same broken seal.</summary>
    public const string SealReportedAlready = "seal-reported-already";

    /// <summary>A report that names nothing found.</summary>
    public const string SealFindingMissing = "seal-finding-missing";

    /// <summary>A correction names an entry that is not there.</summary>
    public const string VoidedEntryUnknown = "voided-entry-unknown";

    /// <summary>A correction names an entry that was corrected before.</summary>
    public const string VoidedAlready = "voided-already";

    /// <summary>A weaker word about a day on which a stronger one stands.</summary>
    public const string WeakerWord = "weaker-word";

    /// <summary>A hold without a first day.</summary>
    public const string HoldWithoutStart = "hold-without-start";

    /// <summary>Care of our own nurse dated into a stay in hospital, or before the return from it.</summary>
    public const string BeforeDischarge = "before-discharge";

    /// <summary>A drug level without the time of the last dose.</summary>
    public const string LevelWithoutLastDose = "level-without-last-dose";

    /// <summary>A drug level drawn through the lumen that gave the drug.</summary>
    public const string LevelFromDrugLumen = "level-from-drug-lumen";

    /// <summary>The last dose before a level was not given when it was ordered.</summary>
    public const string LevelOffDose = "level-off-dose-time";

    /// <summary>A draw without its time.</summary>
    public const string DrawTimeMissing = "draw-time-missing";

    /// <summary>A specimen handed in later after the draw than policy lets pass.</summary>
    public const string DropLate = "specimen-dropped-late";
}
