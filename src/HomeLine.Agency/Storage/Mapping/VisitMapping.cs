using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class VisitMapping : IEntityTypeConfiguration<WeekVisit>
{
    /// <summary>The week a visit row lies in.</summary>
    public const string Week = "Week";

    public void Configure(EntityTypeBuilder<WeekVisit> builder)
    {
        builder.NumberedRows("visits");
        builder.Property<long>(Week);
        builder.Property(v => v.Id).IsRequired();
        builder.Property(v => v.Care).AsJson();
        builder.HasOne<WeekRow>().WithMany().HasForeignKey(Week).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(Week, nameof(WeekVisit.Id)).IsUnique();
        // Nobody is booked twice for the same moment, whatever the program above believes.
        builder.HasIndex(Week, nameof(WeekVisit.Nurse), nameof(WeekVisit.Day), nameof(WeekVisit.Start))
            .IsUnique().HasDatabaseName(BookedOnce);
        builder.HasIndex(Week, nameof(WeekVisit.Second), nameof(WeekVisit.Day), nameof(WeekVisit.Start))
            .IsUnique().HasDatabaseName(SecondBookedOnce);
    }

    public const string BookedOnce = "ix_visits_nurse_booked_once";
    public const string SecondBookedOnce = "ix_visits_second_booked_once";
}
