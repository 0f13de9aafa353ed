using HomeLine.Agency.Holidays;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class HolidayMapping : IEntityTypeConfiguration<Holiday>
{
    public void Configure(EntityTypeBuilder<Holiday> builder)
    {
        builder.NumberedRows("holidays").Changeable();
        builder.Ignore(h => h.Stands);
        builder.Property(h => h.Id).IsRequired();
        builder.HasIndex(h => h.Id).IsUnique();
        builder.HasIndex(h => h.Day);
        builder.Property(h => h.Works).AsJson();
        builder.Property(h => h.Off).AsJson();
        builder.Property(h => h.TakenBack).AsJson();
    }
}
