using HomeLine.LineCare.Orders;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class OrderMapping : IEntityTypeConfiguration<CareOrder>
{
    public void Configure(EntityTypeBuilder<CareOrder> builder)
    {
        builder.NumberedRows("orders").Changeable();
        builder.Property(o => o.Id).IsRequired();
        builder.HasIndex(o => o.Id).IsUnique();
        builder.Property(o => o.Weekdays).AsJson();
        builder.Property(o => o.Dates).AsJson();
        builder.Property(o => o.DoseTimes).AsJson();
        builder.Property(o => o.Skills).AsJson();
        builder.Property(o => o.FirstDose).AsJson();
        builder.OfPatient(o => o.Patient);
        builder.OnLine(o => o.Line);
    }
}
