using HomeLine.LineCare.Orders;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class VerbalOrderMapping : IEntityTypeConfiguration<VerbalOrder>
{
    public void Configure(EntityTypeBuilder<VerbalOrder> builder)
    {
        builder.NumberedRows("verbal_orders").Changeable();
        builder.Property(v => v.Order).IsRequired();
        builder.HasIndex(v => v.Order).IsUnique();
    }
}
