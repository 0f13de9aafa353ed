using HomeLine.Agency.Supervision;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class RideAlongMapping : IEntityTypeConfiguration<RideAlong>
{
    public void Configure(EntityTypeBuilder<RideAlong> builder)
    {
        builder.NumberedRows("ride_alongs").WrittenOnce();
        builder.Property(r => r.Id).IsRequired();
        builder.HasIndex(r => r.Id).IsUnique();
        // One a day for each nurse, whoever enters it at the same moment.
        builder.HasIndex(r => new { r.Nurse, r.Day, r.Round }).IsUnique();
    }
}

internal sealed class RideAlongTakenBackMapping : IEntityTypeConfiguration<RideAlongTakenBack>
{
    public void Configure(EntityTypeBuilder<RideAlongTakenBack> builder)
    {
        builder.NumberedRows("ride_alongs_taken_back").WrittenOnce();
        builder.HasIndex(r => r.Ride).IsUnique();
    }
}
