ALTER TABLE `orders` ADD `notBefore` text CONSTRAINT "date_notBefore" CHECK("notBefore" = date("notBefore"));
