using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Holidays;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Orders;
using HomeLine.Agency.PolicyLibrary;
using HomeLine.Agency.Quality;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Storage.Mapping;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;
using OutsideCare = HomeLine.Agency.Roster.OutsideCare;

namespace HomeLine.Agency.Storage;

/// <summary>
/// Everything the agency keeps. One model on two providers; each has a thin context of its own for its migrations.
/// Open one for one use case through <c>IDbContextFactory&lt;AgencyDb&gt;</c>, and write inside <see cref="WorkTransactions.BeginWorkAsync"/>.
/// </summary>
public abstract class AgencyDb : IdentityDbContext<Account>, IDataProtectionKeyContext
{
    private static readonly IServiceProvider OutsideOfAnApplication = new ServiceCollection()
        .Configure<IdentityOptions>(options => options.Stores.SchemaVersion = SignInSchema)
        .BuildServiceProvider();

    protected AgencyDb(DbContextOptions options)
        : base(options)
    {
    }

    /// <summary>What this application remembers of the roster; empty for a context made outside of one.</summary>
    internal RosterMemory? Memory { get; set; }

    public DbSet<AgencyProfile> Profile => Set<AgencyProfile>();
    public DbSet<AgencyMap> Map => Set<AgencyMap>();
    public DbSet<Patient> Patients => Set<Patient>();
    public DbSet<Line> Lines => Set<Line>();
    public DbSet<Infusion> Infusions => Set<Infusion>();
    public DbSet<LineEvent> LineEvents => Set<LineEvent>();
    public DbSet<CareOrder> Orders => Set<CareOrder>();
    public DbSet<CaregiverValidation> Caregivers => Set<CaregiverValidation>();
    public DbSet<Hold> Holds => Set<Hold>();
    public DbSet<CareException> Exceptions => Set<CareException>();
    public DbSet<OutsideCare> OutsideCare => Set<OutsideCare>();
    public DbSet<NurseFile> Nurses => Set<NurseFile>();
    public DbSet<PolicyRule> PolicyRules => Set<PolicyRule>();
    public DbSet<WeekVisit> Visits => Set<WeekVisit>();
    public DbSet<PublishedVersion> PublishedVersions => Set<PublishedVersion>();
    public DbSet<WeekEdit> WeekEdits => Set<WeekEdit>();
    public DbSet<FiledReport> Reports => Set<FiledReport>();
    public DbSet<ToTell> ToTell => Set<ToTell>();
    public DbSet<FiledTrouble> Troubles => Set<FiledTrouble>();
    public DbSet<DecisionRecord> Decisions => Set<DecisionRecord>();
    public DbSet<PolicyDraft> PolicyDrafts => Set<PolicyDraft>();
    public DbSet<PolicyVerdict> PolicyVerdicts => Set<PolicyVerdict>();
    public DbSet<VerbalOrder> VerbalOrders => Set<VerbalOrder>();
    public DbSet<Referral> Referrals => Set<Referral>();
    public DbSet<OrderRequest> OrderRequests => Set<OrderRequest>();
    public DbSet<VisitRecord> VisitRecords => Set<VisitRecord>();
    public DbSet<CoSignature> CoSignatures => Set<CoSignature>();
    public DbSet<PractitionerNotice> PractitionerNotices => Set<PractitionerNotice>();
    public DbSet<CheckIn> CheckIns => Set<CheckIn>();
    public DbSet<Holiday> Holidays => Set<Holiday>();
    public DbSet<CaseReview> CaseReviews => Set<CaseReview>();
    public DbSet<RideAlong> RideAlongs => Set<RideAlong>();
    public DbSet<RideAlongTakenBack> RideAlongsTakenBack => Set<RideAlongTakenBack>();
    public DbSet<PrintedCareSheet> PrintedCareSheets => Set<PrintedCareSheet>();
    public DbSet<AuditEntry> AuditEntries => Set<AuditEntry>();
    public DbSet<Activation> Activations => Set<Activation>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>The shape of the sign-in tables: with passkeys.</summary>
    internal static Version SignInSchema => IdentitySchemaVersions.Version3;

    internal DbSet<WeekRow> Weeks => Set<WeekRow>();

    /// <inheritdoc/>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        BeforeSaving();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <inheritdoc/>
    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        BeforeSaving();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc/>
    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder)
    {
        base.OnConfiguring(optionsBuilder);
        // The sign-in framework asks the application which shape its tables have; a context made outside of one
        // (by the migration tool) must answer the same.
        if (optionsBuilder.Options.FindExtension<CoreOptionsExtension>()?.ApplicationServiceProvider is null)
            optionsBuilder.UseApplicationServiceProvider(OutsideOfAnApplication);
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        StoredValues.Configure(configurationBuilder);
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(AgencyDb).Assembly);
        SignInTables.Name(builder);
        SnakeCaseNames.Apply(builder);
    }

    private void BeforeSaving()
    {
        ChangeTracker.DetectChanges();
        AppendOnly.Guard(this);
        RowKey.CountVersions(this);
    }
}
