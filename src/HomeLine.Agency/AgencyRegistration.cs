using HomeLine.Agency.Absence;
using HomeLine.Agency.Access;
using HomeLine.Agency.Caregivers;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.DayMap;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Due;
using HomeLine.Agency.Holidays;
using HomeLine.Agency.Lines;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Orders;
using HomeLine.Agency.OwnWeek;
using HomeLine.Agency.PolicyLibrary;
using HomeLine.Agency.Quality;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.Today;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;

namespace HomeLine.Agency;

/// <summary>Puts the agency together for whoever hosts it.</summary>
public static class AgencyRegistration
{
    /// <summary>
    /// Registers storage, accounts and the clock. <c>Database:Provider</c> is <c>sqlite</c> (default) or <c>postgres</c>;
    /// <c>ConnectionStrings:Agency</c> says where, and is needed for <c>postgres</c> only.
    /// </summary>
    /// <param name="services">The host's services.</param>
    /// <param name="configuration">The host's configuration.</param>
    /// <param name="contentRoot">Folder of the program; the default database lies in <c>data</c> beneath it.</param>
    public static IServiceCollection AddHomeLineAgency(
        this IServiceCollection services, IConfiguration configuration, string contentRoot)
    {
        services.TryAddSingleton<IClock>(SystemClock.Instance);
        services.AddSingleton<AgencyClock>();
        services.AddAgencyStorage(configuration, contentRoot);
        services.AddSingleton<MoveDemoClock>();
        services.AddSingleton<AskBranch>();
        services.AddSingleton<ImportRoster>();
        services.AddSingleton<AskDueList>();
        services.AddSingleton<AskPatient>();
        services.AddSingleton<AskTimeline>();
        services.AddSingleton<AskPolicyInForce>();
        services.AddSingleton<AskWeek>();
        services.AddSingleton<PlanTheWeek>();
        services.AddSingleton<PublishWeek>();
        services.AddSingleton<PlanOwnWeek>();
        services.AddSingleton<WorkingWeeks>();
        services.AddSingleton<EditWeek>();
        services.AddSingleton<KeepLeave>();
        services.AddSingleton<KeepHoliday>();
        services.AddSingleton<TakeHolidayBack>();
        services.AddSingleton<AskHolidays>();
        services.AddSingleton<AskFairness>();
        services.AddSingleton<AskDayMap>();
        services.AddSingleton<ReportProblem>();
        services.AddSingleton<TickTold>();
        services.AddSingleton<MendTrouble>();
        services.AddSingleton<LiftClosure>();
        services.AddSingleton<ReleasePlace>();
        services.AddSingleton<AskToday>();
        services.AddSingleton<KeepOutbox>();
        services.AddSingleton<StepBack>();
        services.AddSingleton<AskClosable>();
        services.AddSingleton<AskDecisions>();
        services.AddSingleton<AskOrders>();
        services.AddSingleton<TakeOrder>();
        services.AddSingleton<KeepReferral>();
        services.AddSingleton<ExceptPatient>();
        services.AddSingleton<ValidateCaregiver>();
        services.AddSingleton<KeepAbsence>();
        services.AddSingleton<CorrectPatient>();
        services.AddSingleton<AskPolicyShelf>();
        services.AddSingleton<DraftPolicy>();
        services.AddSingleton<DecideQuestion>();
        services.AddSingleton<AddLine>();
        services.AddSingleton<KeepCheckIn>();
        services.AddSingleton<AskHomeForSigns>();
        services.AddSingleton<RecordVisit>();
        services.AddSingleton<AskVisit>();
        services.AddSingleton<AskVisitList>();
        services.AddSingleton<AskMyDay>();
        services.AddSingleton<CoSignVisit>();
        services.AddSingleton<TellPractitioner>();
        services.AddSingleton<DropReplacedVisit>();
        services.AddSingleton<AskQuality>();
        services.AddSingleton<ReviewCase>();
        services.AddSingleton<AskRideAlongs>();
        services.AddSingleton<RecordRideAlong>();
        services.AddSingleton<TakeRideAlongBack>();
        services.AddSingleton<AskSheets>();
        services.AddAgencyAccounts();
        services.AddSingleton<OpenAgency>();
        return services;
    }
}
